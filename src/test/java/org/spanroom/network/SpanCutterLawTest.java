package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Line;
import org.spanroom.model.ValueSource;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.NetworkSettings;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;

/** What is true of every network, over random ones with all faults. */
class SpanCutterLawTest {
    private static final NetworkSettings DRAWN = ShippedConfig.get().network();
    private static final NetworkSettings RECORDED =
            new NetworkSettings(1.5, 0.4, 4, 0.3, 0.8, ValueSource.RECORDED, ValueSource.RECORDED, 15, 0.05, 2);

    static LongStream seeds() {
        return LongStream.range(0, 40);
    }

    private static NetworkSettings settings(long seed) {
        return seed % 3 == 0 ? RECORDED : DRAWN;
    }

    private static Network cut(List<Route> routes, List<Vault> vaults, NetworkSettings settings, FindingLog log) {
        return new SpanCutter(settings, 1).cut(routes, vaults, log);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void spansAndNamedRemaindersAddUpToTheRoutes(long seed) {
        var city = new FaultyCity(seed, 6, 40);
        var log = new FindingLog();

        Network network = cut(city.routes, city.vaults, settings(seed), log);

        double exactM =
                city.routes.stream().mapToDouble(r -> geodesicM(r.lonLat())).sum();
        double spansM = network.spans().stream().mapToDouble(Span::drawnLengthM).sum();
        double namedM = log.all().stream().mapToDouble(Finding::lengthM).sum();
        assertThat(network.routeLengthM()).isCloseTo(exactM, within(1e-6 * exactM));
        assertThat(spansM + namedM).isCloseTo(network.routeLengthM(), within(1e-3));
        assertThat(network.spanLengthM()).isCloseTo(spansM, within(1e-6));
        assertThat(network.remainderLengthM()).isCloseTo(namedM, within(1e-6));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void everySpanIsSound(long seed) {
        var city = new FaultyCity(seed, 6, 40);
        NetworkSettings settings = settings(seed);

        var log = new FindingLog();
        Network network = cut(city.routes, city.vaults, settings, log);
        List<String> bridged = log.all().stream()
                .filter(finding -> finding.code() == FindingCode.GAP_BRIDGED)
                .map(Finding::featureId)
                .toList();

        assertThat(network.spans()).extracting(Span::id).doesNotHaveDuplicates();
        double reachM = Math.max(settings.snapToleranceM(), settings.recordedVaultReachM()) + 1;
        assertThat(network.spans()).allSatisfy(span -> {
            assertThat(span.drawnLengthM()).isGreaterThanOrEqualTo(settings.minimumSpanM() - 1e-5);
            assertThat(span.fromOffsetM()).isLessThan(reachM);
            assertThat(span.toOffsetM()).isLessThan(reachM);
            double joinsM = span.routeIds().size() * settings.joinToleranceM();
            assertThat(span.ground().planeLength()).isCloseTo(span.drawnLengthM(), within(joinsM));
            assertThat(geodesicM(span.lonLat()))
                    .isCloseTo(span.ground().planeLength(), within(1e-6 * span.drawnLengthM()));
            for (int vertex = 0; vertex + 1 < span.ground().size(); vertex++) {
                assertThat(span.ground().stepLength(vertex)).isPositive();
            }
            if (span.routeIds().size() == 1 && !bridged.contains(span.routeIds().get(0))) {
                assertThat(span.ground().planeLength())
                        .isCloseTo(span.drawnLengthM(), within(1e-6 * span.drawnLengthM()));
            }
        });
        long ends = network.vaults().stream().mapToLong(use -> use.spanCount()).sum();
        assertThat(ends).isEqualTo(2L * network.spans().size());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void orderAndDirectionOfDrawingDoNotChangeTheSpans(long seed) {
        var city = new FaultyCity(seed, 6, 40);
        List<String> asDrawn = spanSet(cut(city.routes, city.vaults, settings(seed), new FindingLog()));

        for (long other = 0; other < 3; other++) {
            var redrawn = cut(city.redrawn(other), city.vaults, settings(seed), new FindingLog());
            assertThat(spanSet(redrawn)).isEqualTo(asDrawn);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void threadsAndOrderOfTheListsChangeNothingAtAll(long seed) {
        var city = new FaultyCity(seed, 8, 500);
        var log = new FindingLog();
        Network one = cut(city.routes, city.vaults, settings(seed), log);
        List<Route> shuffledRoutes = new ArrayList<>(city.routes);
        List<Vault> shuffledVaults = new ArrayList<>(city.vaults);
        Collections.shuffle(shuffledRoutes, new Random(seed));
        Collections.shuffle(shuffledVaults, new Random(seed));
        var otherLog = new FindingLog();

        Network other = new SpanCutter(settings(seed), 3).cut(shuffledRoutes, shuffledVaults, otherLog);

        assertThat(other.equals(one)).isTrue();
        assertThat(otherLog.all()).isEqualTo(log.all());
    }

    @Test
    void theRandomCitiesHaveEveryFault() {
        var log = new FindingLog();
        seeds().forEach(seed -> {
            var city = new FaultyCity(seed, 6, 40);
            cut(city.routes, city.vaults, DRAWN, log);
        });

        assertThat(log.countByCode().keySet())
                .containsAll(EnumSet.of(
                        FindingCode.DUPLICATE_VERTEX,
                        FindingCode.ZERO_LENGTH_PART,
                        FindingCode.DUPLICATE_VAULT,
                        FindingCode.VAULTS_TOO_CLOSE,
                        FindingCode.VAULT_FAR_FROM_ROUTES,
                        FindingCode.END_WITHOUT_VAULT,
                        FindingCode.ROUTE_WITHOUT_VAULT,
                        FindingCode.GAP_BEYOND_TOLERANCE,
                        FindingCode.GAP_BRIDGED,
                        FindingCode.AMBIGUOUS_JOINT,
                        FindingCode.ATTRIBUTES_CHANGE_AT_JOINT,
                        FindingCode.LOOP_TO_SAME_VAULT,
                        FindingCode.LENGTH_INSIDE_VAULT,
                        FindingCode.SHORT_STRETCH,
                        FindingCode.RECORDED_LENGTH_DIFFERS,
                        FindingCode.RECORDED_VAULT_DIFFERS,
                        FindingCode.RECORDED_VAULT_UNKNOWN));
    }

    /** One line a span that says nothing of order or direction. */
    private static List<String> spanSet(Network network) {
        return network.spans().stream()
                .map(span -> {
                    List<String> ends =
                            Stream.of(span.from().id(), span.to().id()).sorted().toList();
                    List<String> routes =
                            span.routeIds().stream().distinct().sorted().toList();
                    return ends + " " + routes + String.format(Locale.ROOT, " %.4f", span.drawnLengthM() + 5e-9);
                })
                .sorted()
                .toList();
    }

    private static double geodesicM(Line line) {
        double meters = 0;
        for (int i = 0; i + 1 < line.size(); i++) {
            meters += Geodesic.WGS84.Inverse(line.y(i), line.x(i), line.y(i + 1), line.x(i + 1)).s12;
        }
        return meters;
    }
}
