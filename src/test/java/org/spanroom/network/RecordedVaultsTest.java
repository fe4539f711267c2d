package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.model.network.NetworkSettings;

/**
 * Where the records say which vault a line's end is at, they do not turn round what is drawn: generated pipes of 1 to 9 m,
 * shorter than the reach of 10 m, so that both vaults are in reach of both ends.
 */
class RecordedVaultsTest {
    private static final double REACH_M = 10;
    private static final NetworkSettings RECORDS_COUNT = new NetworkSettings(
            1,
            0.5,
            5,
            0.3,
            1,
            org.spanroom.model.ValueSource.DRAWN,
            org.spanroom.model.ValueSource.RECORDED,
            REACH_M,
            0.05,
            2);

    /** Names at the two ends of a pipe drawn from V1 to V2, and which of them are findings. */
    private enum Names {
        AS_DRAWN("from=V1 to=V2", ""),
        SPELLED_OTHERWISE("from=v1 to=v2", ""),
        REVERSED(
                "from=V2 to=V1",
                "the recorded vaults are swapped: the line is drawn from V1 to V2; the drawn order was used"),
        BOTH_THE_FIRST("from=V1 to=V1", "the recorded vault is V1,"),
        BOTH_THE_LAST("from=V2 to=V2", "the recorded vault is V2,"),
        ONLY_FROM("from=V1", ""),
        ONLY_TO("to=V2", ""),
        ONLY_FROM_AND_WRONG("from=V2", "the recorded vault is at the line's other end"),
        ONLY_TO_AND_WRONG("to=V1", "the recorded vault is at the line's other end"),
        NONE("", "");

        private final String words;
        private final String detail;

        Names(String words, String detail) {
            this.words = words;
            this.detail = detail;
        }
    }

    static Stream<Arguments> shortPipes() {
        return IntStream.range(0, 27)
                .boxed()
                .flatMap(seed -> Stream.of(Names.values()).map(names -> Arguments.of(1 + seed / 3.25, seed, names)));
    }

    private static String point(double x, double y) {
        return String.format(Locale.ROOT, " %.4f,%.4f", x, y);
    }

    /** A pipe from V1 to V2, straight or kinked, the vaults up to 0.3 m off its ends, with long pipes of other ducts on. */
    private static Sketch pipe(double lengthM, int seed, String names) {
        var random = new Random(seed);
        double turn = 2 * Math.PI * random.nextDouble();
        double eastM = lengthM * Math.cos(turn);
        double northM = lengthM * Math.sin(turn);
        double offM = 0.2 * random.nextDouble();
        String kink = random.nextInt(3) > 0 ? "" : point(eastM / 2 - 0.3 * northM, northM / 2 + 0.3 * eastM);
        String text = "vault V1" + point(offM, -offM)
                + "\nvault V2" + point(eastM - offM, northM)
                + "\nvault V3" + point(eastM + 60, northM)
                + "\nroute short d1" + point(0, 0) + kink + point(eastM, northM) + " " + names
                + "\nroute long d2" + point(eastM, northM) + point(eastM + 60, northM) + " from=V2 to=V3";
        return Sketch.of(text);
    }

    @ParameterizedTest(name = "{0} m, {2}")
    @MethodSource("shortPipes")
    void theDrawnOrderOfTheVaultsOfAShortPipeStands(double lengthM, int seed, Names names) {
        var result = pipe(lengthM, seed, names.words).cut(RECORDS_COUNT);

        assertThat(result.network().spans())
                .extracting(span -> span.from().id() + " " + span.to().id())
                .as(result.findings() + result.details())
                .containsExactly("V1 V2", "V2 V3");
        assertThat(result.findings().stream().filter(text -> text.startsWith("RECORDED_VAULT")))
                .containsExactlyElementsOf(
                        names.detail.isEmpty() ? List.of() : List.of("RECORDED_VAULT_DIFFERS short"));
        assertThat(result.details()).contains(names.detail);
    }

    /** No vault is in tolerance; the records alone say which two there are, the drawing in which order. */
    @ParameterizedTest(name = "{0} m")
    @ValueSource(doubles = {1, 1.5, 2, 3, 4, 5, 6, 7, 8, 9})
    void ofVaultsBeyondToleranceTheRecordsSayWhichAndTheDrawingTheOrder(double lengthM) {
        String drawn =
                "vault V1 -3,0\nvault V2" + point(lengthM + 3, 0) + "\nroute r d" + point(0, 0) + point(lengthM, 0);

        var asDrawn = Sketch.of(drawn + " from=V1 to=V2").cut(RECORDS_COUNT);
        var reversed = Sketch.of(drawn + " from=V2 to=V1").cut(RECORDS_COUNT);
        var same = Sketch.of(drawn + " from=V1 to=V1").cut(RECORDS_COUNT);

        String span = String.format(Locale.ROOT, "d:V1:V2 %.2f r", lengthM);
        assertThat(asDrawn.spans()).containsExactly(span);
        assertThat(asDrawn.findings()).isEmpty();
        assertThat(reversed.spans()).containsExactly(span);
        assertThat(reversed.findings()).containsExactly("RECORDED_VAULT_DIFFERS r");
        assertThat(same.spans())
                .as("no line runs from a vault back to it unless it is drawn so")
                .isEmpty();
    }

    @ParameterizedTest(name = "{0} m")
    @ValueSource(doubles = {1.2, 2, 3, 4, 5, 6, 7, 8, 9})
    void aLineDrawnPastItsRecordedVaultIsAtItWhereItPassesIt(double pastM) {
        var result = Sketch.of("vault A 0,0\nvault B 100,0\nroute r d" + point(-pastM, 0) + " 100,0 from=A to=B")
                .cut(RECORDS_COUNT);

        assertThat(result.spans()).containsExactly("d:A:B 100.00 r");
        assertThat(result.findings()).contains(String.format(Locale.ROOT, "END_WITHOUT_VAULT r %.2f", pastM));
    }

    @ParameterizedTest(name = "{0} m")
    @ValueSource(doubles = {1.2, 2, 4, 6, 8, 9.9})
    void onALongLineTheRecordedVaultInReachTakesTheEnd(double beyondM) {
        var result = Sketch.of("vault A 0,0\nvault X 100,0.4\nvault B" + point(100 + beyondM, 0)
                        + "\nroute r d 0,0 100,0 from=A to=B")
                .cut(RECORDS_COUNT);

        assertThat(result.spans()).containsExactly("d:A:B 100.00 r");
    }

    @ParameterizedTest
    @ValueSource(doubles = {60, 200})
    void aLongLoopBackToItsRecordedVaultStaysOne(double sideM) {
        String ring = point(0.5, 0) + point(sideM, 0) + point(sideM, sideM) + point(0, sideM) + point(0, 4);
        var result = Sketch.of("vault A 0,0\nroute r d" + ring + " from=A to=A").cut(RECORDS_COUNT);

        assertThat(result.findings()).containsExactly("LOOP_TO_SAME_VAULT r");
        assertThat(result.spans()).hasSize(1);
    }
}
