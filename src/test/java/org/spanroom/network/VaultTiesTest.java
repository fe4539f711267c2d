package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.NetworkSettings;
import org.spanroom.model.network.Vault;

/** Which of several vaults takes an end: the nearest, then the recorded, then the smaller name; never the first of the file. */
class VaultTiesTest {
    private static final NetworkSettings DRAWN = ShippedConfig.get().network();
    private static final NetworkSettings RECORDED = new NetworkSettings(
            1.5,
            0.4,
            4,
            0.3,
            0.8,
            org.spanroom.model.ValueSource.RECORDED,
            org.spanroom.model.ValueSource.RECORDED,
            15,
            0.05,
            2);

    /** Returns the vaults as another export of the same layer has them: in another order and numbered in that order. */
    private static List<Vault> exportedAgain(List<Vault> vaults, long seed) {
        List<Vault> shuffled = new ArrayList<>(vaults);
        Collections.shuffle(shuffled, new Random(seed));
        List<Vault> numbered = new ArrayList<>();
        for (Vault vault : shuffled) {
            numbered.add(new Vault(
                    numbered.size(),
                    vault.id(),
                    vault.lonDeg(),
                    vault.latDeg(),
                    vault.footprint(),
                    vault.elevationM(),
                    vault.kind(),
                    vault.site(),
                    vault.facts(),
                    vault.rejected()));
        }
        return numbered;
    }

    private static void assertSameWhateverTheOrder(Sketch sketch, NetworkSettings settings) {
        var log = new FindingLog();
        var network = new SpanCutter(settings, 1).cut(sketch.routes, sketch.vaults, log);
        for (long seed = 0; seed < 5; seed++) {
            var otherLog = new FindingLog();
            var other = new SpanCutter(settings, 2).cut(sketch.routes, exportedAgain(sketch.vaults, seed), otherLog);
            assertThat(lines(other)).isEqualTo(lines(network));
            assertThat(otherLog.all()).isEqualTo(log.all());
        }
    }

    private static List<String> lines(Network network) {
        return network.spans().stream()
                .map(span -> span.id()
                        + span.routeIds()
                        + span.from().id()
                        + span.to().id()
                        + span.lonLat()
                        + span.lengthM())
                .toList();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void theOrderOfTheVaultsFileChangesNothing(long seed) {
        var city = new FaultyCity(seed, 7, 120);
        NetworkSettings settings = seed % 2 == 0 ? DRAWN : RECORDED;
        var log = new FindingLog();
        var network = new SpanCutter(settings, 1).cut(city.routes, city.vaults, log);

        for (long other = 0; other < 4; other++) {
            var otherLog = new FindingLog();
            var again = new SpanCutter(settings, 3).cut(city.routes, exportedAgain(city.vaults, other), otherLog);

            assertThat(lines(again)).isEqualTo(lines(network));
            assertThat(again.vaults().stream().map(use -> use.vault().id() + use.mergedIds() + use.spanCount()))
                    .isEqualTo(network.vaults().stream()
                            .map(use -> use.vault().id() + use.mergedIds() + use.spanCount())
                            .toList());
            assertThat(otherLog.all()).isEqualTo(log.all());
        }
    }

    /** Two vaults as far to the left of a line's end as to its right. */
    @ParameterizedTest(name = "{0} and {1}, recorded {2}: {3}")
    @CsvSource({
        "V9, V10, '', V9",
        "V10, V9, '', V9",
        "V9, V10, V10, V10",
        "V10, V9, V10, V10",
        "B, A, '', A",
        "M02, M1, '', M1",
        "V9, V10, Z, V9"
    })
    void equallyNearVaultsGoByTheRecordThenByTheirNames(String left, String right, String recorded, String winner) {
        for (int decimeters = 2; decimeters < 10; decimeters++) {
            double offM = decimeters / 10.0;
            var sketch = Sketch.of(String.format(
                    Locale.ROOT,
                    "vault S 0,0%nvault %s 100,%.2f%nvault %s 100,-%.2f%nroute r d 0,0 100,0 %s",
                    left,
                    offM,
                    right,
                    offM,
                    recorded.isEmpty() ? "" : "to=" + recorded));

            for (NetworkSettings settings : List.of(DRAWN, RECORDED)) {
                assertThat(sketch.cut(settings).spans()).containsExactly("d:S:" + winner + " 100.00 r");
                assertSameWhateverTheOrder(sketch, settings);
            }
        }
    }

    /** The nearer wins by what can be drawn, a centimeter, whatever the other is called and wherever it is. */
    @ParameterizedTest
    @CsvSource({"A, B", "B, A"})
    void theNearestToTheLinesEndWinsWhatItIsCalledAside(String near, String far) {
        for (double offM = 0.2; offM < 0.95; offM += 0.05) {
            var sketch = Sketch.of(String.format(
                    Locale.ROOT,
                    "vault S 0,0%nvault %s 100,%.2f%nvault %s 100,-%.2f%nroute r d 0,0 100,0 to=%s",
                    near,
                    offM,
                    far,
                    offM + 0.01,
                    far));

            assertThat(sketch.cut(DRAWN).spans()).containsExactly("d:S:" + near + " 100.00 r");
            assertThat(sketch.cut(RECORDED).spans()).containsExactly("d:S:" + far + " 100.00 r");
        }
    }

    /** What counts at an end is the way from the end, not how near the line passes before it. */
    @Test
    void aVaultOnTheLineShortOfItsEndDoesNotTakeTheEndOfANearerOne() {
        var result = Sketch.of("""
                vault S 0,0
                vault ON 99.2,0
                vault END 100.1,0.3
                route r d 0,0 100,0
                """).cut();

        assertThat(result.spans()).containsExactly("d:S:END 100.00 r");
        assertThat(result.findings()).containsExactly("VAULTS_TOO_CLOSE ON");
    }

    @ParameterizedTest(name = "{0} m")
    @ValueSource(doubles = {0.05, 0.1, 0.2, 0.29})
    void ofVaultsAtOnePlaceTheSmallerNameStands(double apartM) {
        for (String names : List.of("V2 V10 V33", "V33 V2 V10", "V10 V33 V2")) {
            String[] name = names.split(" ", -1);
            var sketch = Sketch.of(String.format(
                    Locale.ROOT,
                    "vault S 0,0%nvault %s 100,0%nvault %s 100,%.2f%nvault %s 100,-%.2f%nroute r d 0,0 100,0",
                    name[0],
                    name[1],
                    apartM / 2,
                    name[2],
                    apartM / 2));

            var result = sketch.cut();

            assertThat(result.spans()).containsExactly("d:S:V2 100.00 r");
            assertThat(result.findings()).containsExactly("DUPLICATE_VAULT V10", "DUPLICATE_VAULT V33");
            assertSameWhateverTheOrder(sketch, DRAWN);
        }
    }
}
