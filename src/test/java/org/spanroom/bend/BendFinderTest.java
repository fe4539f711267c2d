package org.spanroom.bend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Line;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bend.Turn;

/** Shapes whose bends are known by construction. */
class BendFinderTest {
    private static final double FOUR_INCH_MM = 102.26;
    private static final double TWO_INCH_MM = 52.5;

    /** 36 in and 18 in: UFGS 16525A. */
    private static final double LARGE_SWEEP_M = 0.9144;

    private static final double SMALL_SWEEP_M = 0.4572;

    private final BendFinder finder = new BendFinder(ShippedConfig.get().bend());

    @Test
    void aRightAngleAtOneVertexIsOneAssumedSweep() {
        List<Bend> bends = find(Line.ofXy(0, 0, 100, 0, 100, 80));

        assertThat(bends).hasSize(1);
        Bend bend = bends.get(0);
        assertThat(bend.deflection().deg()).isCloseTo(90, within(1e-6));
        assertThat(bend.turn()).isEqualTo(Turn.LEFT);
        assertThat(bend.middleM()).isCloseTo(100, within(1e-6));
        assertThat(bend.radiusM()).isCloseTo(LARGE_SWEEP_M, within(1e-9));
        assertThat(bend.arcLengthM()).isCloseTo(LARGE_SWEEP_M * Math.PI / 2, within(1e-9));
        assertThat(bend.radiusAssumed()).isTrue();
    }

    @Test
    void theAssumedSweepFollowsTheBore() {
        Bend bend = finder.find(Line.ofXy(0, 0, 100, 0, 100, -80), TWO_INCH_MM)
                .list()
                .get(0);

        assertThat(bend.radiusM()).isCloseTo(SMALL_SWEEP_M, within(1e-9));
        assertThat(bend.turn()).isEqualTo(Turn.RIGHT);
    }

    @ParameterizedTest(name = "{0} degrees of {1} m radius in {2} chords")
    @CsvSource({
        "90, 0.9, 6",
        "45, 3, 5",
        "22.5, 10, 6",
        "-60, 20, 9",
        "90, 25, 40",
        "-15, 60, 6",
        "120, 8, 20",
        "30, 60, 100"
    })
    void anArcDrawnAsChordsShowsItsRadius(double turnDeg, double radiusM, int chords) {
        Line line = Drawing.heading(17)
                .straight(60, 4)
                .arc(turnDeg, radiusM, chords)
                .straight(80, 5)
                .line();

        List<Bend> bends = find(line);

        assertThat(bends).hasSize(1);
        Bend bend = bends.get(0);
        double lengthM = radiusM * Math.toRadians(Math.abs(turnDeg));
        assertThat(bend.deflection().deg()).isCloseTo(Math.abs(turnDeg), within(0.05));
        assertThat(bend.turn()).isEqualTo(turnDeg > 0 ? Turn.LEFT : Turn.RIGHT);
        assertThat(bend.radiusAssumed()).isFalse();
        assertThat(bend.radiusM()).isCloseTo(radiusM, within(0.03 * radiusM));
        assertThat(bend.arcLengthM()).isCloseTo(lengthM, within(0.03 * lengthM));
        assertThat(bend.startM()).isCloseTo(60, within(0.03 * lengthM));
    }

    @Test
    void aReverseCurveIsTwoBends() {
        Line line = Drawing.heading(0)
                .straight(50, 3)
                .arc(40, 15, 10)
                .arc(-40, 15, 10)
                .straight(50, 3)
                .line();

        List<Bend> bends = find(line);

        assertThat(bends).extracting(Bend::turn).containsExactly(Turn.LEFT, Turn.RIGHT);
        assertThat(bends)
                .allSatisfy(bend -> assertThat(bend.deflection().deg()).isCloseTo(40, within(0.5)))
                .allSatisfy(bend -> assertThat(bend.radiusM()).isCloseTo(15, within(0.5)));
    }

    @ParameterizedTest(name = "{0} m, then {1} m")
    @CsvSource({"10, 30", "40, 12", "5, 20"})
    void aCompoundCurveIsOneBendOfItsSmallestRadius(double firstRadiusM, double secondRadiusM) {
        Line line = Drawing.heading(-70)
                .straight(50, 3)
                .arc(35, firstRadiusM, 9)
                .arc(35, secondRadiusM, 12)
                .straight(50, 3)
                .line();

        List<Bend> bends = find(line);

        assertThat(bends).hasSize(1);
        assertThat(bends.get(0).deflection().deg()).isCloseTo(70, within(0.1));
        assertThat(bends.get(0).radiusM())
                .isCloseTo(Math.min(firstRadiusM, secondRadiusM), within(0.06 * Math.min(firstRadiusM, secondRadiusM)));
    }

    /** Curvature grows evenly from 0 to 1/12 per meter and falls again: the turn is half of 40 m over 12 m, 95.5 degrees. */
    @Test
    void aSpiralIsOneBend() {
        Drawing drawing = Drawing.heading(0).straight(60, 4);
        for (int step = 0; step < 40; step++) {
            double radiusM = 12 / (1 - Math.abs(step + 0.5 - 20) / 20);
            drawing.arc(Math.toDegrees(1 / radiusM), radiusM, 1);
        }

        List<Bend> bends = find(drawing.straight(60, 4).line());

        assertThat(bends).hasSize(1);
        assertThat(bends.get(0).deflection().deg()).isCloseTo(Math.toDegrees(20 / 12.0), within(0.5));
        assertThat(bends.get(0).radiusM()).isBetween(11.0, 17.0);
    }

    @Test
    void aGentleCurveOfManyCornersIsOneBend() {
        Line line = Drawing.heading(30)
                .straight(40, 2)
                .arc(12, 600, 8)
                .straight(40, 2)
                .line();

        List<Bend> bends = find(line);

        assertThat(bends).hasSize(1);
        assertThat(bends.get(0).deflection().deg()).isCloseTo(12, within(0.1));
        assertThat(bends.get(0).radiusM()).isCloseTo(600, within(20.0));
        assertThat(bends.get(0).radiusAssumed()).isFalse();
    }

    @Test
    void aCurveFromVaultToVaultCountsFromEndToEnd() {
        List<Bend> bends = find(Drawing.heading(0).arc(50, 80, 14).line());

        assertThat(bends).hasSize(1);
        assertThat(bends.get(0).deflection().deg()).isCloseTo(50, within(1.0));
        assertThat(bends.get(0).radiusM()).isCloseTo(80, within(2.0));
        assertThat(bends.get(0).startM()).isCloseTo(0, within(2.0));
    }

    @Test
    void aHalfTurnAndMoreIsOneBend() {
        List<Bend> bends = find(Drawing.heading(0)
                .straight(50, 3)
                .arc(200, 20, 30)
                .straight(60, 3)
                .line());

        assertThat(bends).hasSize(1);
        assertThat(bends.get(0).deflection().deg()).isCloseTo(200, within(1.0));
        assertThat(bends.get(0).radiusM()).isCloseTo(20, within(1.0));
    }

    @Test
    void twoCornersFarApartAreTwoBends() {
        List<Bend> bends = find(Line.ofXy(0, 0, 60, 0, 60, 40, 0, 40));

        assertThat(bends).hasSize(2);
        assertThat(bends).allSatisfy(bend -> assertThat(bend.deflection().deg()).isCloseTo(90, within(1e-6)));
    }

    @Test
    void duplicatesAndCollinearVerticesChangeNothing() {
        List<Bend> plain = find(Line.ofXy(0, 0, 60, 0, 60, 40, 90, 55));

        List<Bend> cluttered =
                find(Line.ofXy(0, 0, 0, 0, 20, 0, 35, 0, 60, 0, 60, 0, 60, 0, 60, 10, 60, 40, 70, 45, 90, 55, 90, 55));

        assertThat(cluttered).hasSameSizeAs(plain);
        for (int i = 0; i < plain.size(); i++) {
            assertThat(cluttered.get(i).deflection().deg())
                    .isCloseTo(plain.get(i).deflection().deg(), within(1e-3));
            assertThat(cluttered.get(i).middleM()).isCloseTo(plain.get(i).middleM(), within(1e-3));
        }
    }

    @ParameterizedTest(name = "noise {0} m")
    @ValueSource(doubles = {0, 0.02, 0.05, 0.1, 0.15})
    void noiseIsNoBend(double noiseM) {
        int found = 0;
        for (int seed = 0; seed < 200; seed++) {
            found += find(Drawing.heading(10 * seed).straight(150, 5 + 2 * seed).line(noiseM, seed))
                    .size();
        }
        assertThat(found).as("bends in 200 straights").isLessThanOrEqualTo(2);
    }

    @Test
    void aJogBelowTheToleranceIsNoBend() {
        assertThat(find(Line.ofXy(0, 0, 50, 0, 50.5, 0.25, 100, 0.25))).isEmpty();
        assertThat(find(Line.ofXy(0, 0, 50, 0, 51, 2, 100, 2))).hasSize(2);
    }

    /**
     * What a drafter draws on a stretch little longer than the drawing tolerance of 0.3 m is how he drew the corner, no radius,
     * even where the digits are exact.
     */
    @ParameterizedTest(name = "{0} degrees of {1} m radius in {2} chords")
    @CsvSource({"45, 0.4572, 3", "45, 0.45, 1", "90, 0.3, 4", "-30, 0.9144, 4", "-60, 0.5, 8", "20, 1.5, 5"})
    void verticesCloserThanTheToleranceMeasureNoRadius(double turnDeg, double radiusM, int chords) {
        for (int more = 0; more < 4; more++) {
            Drawing drawing = Drawing.heading(31 * more).straight(40, 1 + more);
            List<Bend> bends = find(drawing.arc(turnDeg, radiusM, chords)
                    .straight(14, 1)
                    .arc(-turnDeg, radiusM, chords)
                    .straight(30, 1 + more)
                    .line());

            assertThat(bends).hasSize(2);
            assertThat(bends).allSatisfy(bend -> {
                assertThat(bend.deflection().deg()).isCloseTo(Math.abs(turnDeg), within(0.5));
                assertThat(bend.radiusAssumed()).isTrue();
                assertThat(bend.radiusM()).isCloseTo(LARGE_SWEEP_M, within(1e-9));
            });
        }
    }

    /** A street that is a little wavy: it turns by up to 3.6 degrees from crest to crest, but a straight would do. */
    @ParameterizedTest(name = "waves of {0} m every {1} m")
    @CsvSource({"0.25, 60", "0.25, 100", "0.15, 40", "0.2, 80", "0.28, 120"})
    void wavesBelowTheToleranceAreNoBends(double heightM, double lengthM) {
        for (int seed = 0; seed < 40; seed++) {
            var random = new Random(seed);
            int vertices = 9 + random.nextInt(12);
            double phase = 2 * Math.PI * random.nextDouble();
            double noiseM = 0.02 * random.nextDouble();
            double[] xy = new double[2 * vertices];
            for (int i = 0; i < vertices; i++) {
                xy[2 * i] = 8.7 * i;
                xy[2 * i + 1] =
                        heightM * Math.sin(phase + 2 * Math.PI * xy[2 * i] / lengthM) + noiseM * random.nextGaussian();
            }
            assertThat(find(Line.ofXy(xy))).as("seed " + seed).isEmpty();
        }
    }

    /** Half a compound curve drawn as one vertex, as lost vertices leave it: what is between is a chord, not a straight. */
    @ParameterizedTest(name = "{0} degrees, {1} m, {2} degrees")
    @CsvSource({"68.5, 5, 20.2", "29.2, 4.5, 37.4", "12.5, 9, 10.7", "8, 11, 25", "-15, 8, -40"})
    void twoCornersThatAChordJoinsAreOneBend(double oneDeg, double chordM, double otherDeg) {
        Line line = Drawing.heading(7)
                .straight(80, 4)
                .turn(oneDeg)
                .straight(chordM, 1)
                .turn(otherDeg)
                .straight(90, 5)
                .line();

        assertThat(find(line))
                .singleElement()
                .satisfies(bend ->
                        assertThat(bend.deflection().deg()).isCloseTo(Math.abs(oneDeg + otherDeg), within(0.5)));
    }

    @ParameterizedTest(name = "{0} m, then {1} m")
    @CsvSource({"200, 127", "300, 180", "150, 260"})
    void aWideCurveThatTightensIsOneBendOfAMeasuredRadius(double oneRadiusM, double otherRadiusM) {
        Line line = Drawing.heading(12)
                .arc(-11, oneRadiusM, 4)
                .arc(-17, otherRadiusM, 5)
                .line();

        assertThat(find(line)).singleElement().satisfies(bend -> {
            assertThat(bend.deflection().deg()).isCloseTo(28, within(2.0));
            assertThat(bend.radiusAssumed()).isFalse();
            assertThat(bend.radiusM())
                    .isBetween(0.8 * Math.min(oneRadiusM, otherRadiusM), Math.max(oneRadiusM, otherRadiusM));
        });
    }

    @Test
    void turningAtTheVaultIsNoBend() {
        assertThat(find(Line.ofXy(0, 0.8, 0, 0, 70, 0))).isEmpty();
        assertThat(find(Line.ofXy(0, 0, 70, 0, 70.2, -0.7))).isEmpty();
        assertThat(find(Line.ofXy(0, 0.8, 0, 0, 30, 0, 30, 40, 30.7, 40)))
                .singleElement()
                .satisfies(bend -> assertThat(bend.deflection().deg()).isCloseTo(90, within(1.5)));
    }

    @Test
    void sweepsThatFindNoRoomAreMadeTighterAndStayApart() {
        List<Bend> bends = find(Line.ofXy(0, 0, 1.2, 0, 1.2, 1.2, 2.4, 1.2, 2.4, 2.4));

        assertThat(bends).hasSize(3);
        assertThat(bends).allSatisfy(bend -> {
            assertThat(bend.radiusAssumed()).isTrue();
            assertThat(bend.radiusM()).isLessThanOrEqualTo(LARGE_SWEEP_M);
            assertThat(bend.arcLengthM())
                    .isCloseTo(bend.radiusM() * bend.deflection().rad(), within(1e-9));
        });
        assertThat(bends.get(1).radiusM()).isLessThan(LARGE_SWEEP_M);
        liesInOrder(bends, 4.8);
    }

    @Test
    void aLineOfTwoVerticesHasNoBend() {
        assertThat(find(Line.ofXy(0, 0, 5, 5))).isEmpty();
        assertThat(find(Line.ofXy(0, 0, 0, 0))).isEmpty();
        assertThat(find(Line.ofXy(3, 3, 3, 3, 3, 3))).isEmpty();
    }

    @Test
    void aLineThatTurnsBackOnItselfIsRead() {
        List<Bend> bends = find(Line.ofXy(0, 0, 50, 0, 0, 0.5));

        assertThat(bends)
                .singleElement()
                .satisfies(bend -> assertThat(bend.deflection().deg()).isCloseTo(180, within(1.0)));
    }

    @Test
    void threeThousandVerticesOfNoisyBendsAreRead() {
        Drawing drawing = Drawing.heading(0);
        for (int bend = 0; bend < 30; bend++) {
            drawing.straight(160, 80).arc(bend % 2 == 0 ? 30 : -30, 20, 20);
        }

        List<Bend> bends = find(drawing.straight(100, 50).line(0.04, 5));

        assertThat(bends).hasSize(30);
        assertThat(bends)
                .allSatisfy(bend -> assertThat(bend.deflection().deg()).isCloseTo(30, within(1.0)))
                .allSatisfy(bend -> assertThat(bend.radiusM()).isCloseTo(20, within(3.0)));
        liesInOrder(bends, Double.POSITIVE_INFINITY);
    }

    /** Counted, not timed: four times the vertices must cost little more than four times the visits. */
    @ParameterizedTest(name = "bends every {0} m")
    @ValueSource(doubles = {40, 160, 2000})
    void workGrowsInProportionToTheVertices(double straightM) {
        assertThat((double) visits(straightM, 6000) / visits(straightM, 1500)).isLessThan(5.5);
    }

    /** Such lines leave a corner at each vertex, dropped one after another: each looks at what those behind it left straight. */
    @ParameterizedTest(name = "teeth of {0} m")
    @ValueSource(doubles = {0.95, 1})
    void workOnAZigzagGrowsInProportionToItsVertices(double toothM) {
        double few = zigzagVisits(toothM, 20_000) / 20_000.0;
        double many = zigzagVisits(toothM, 80_000) / 80_000.0;

        assertThat(few).isPositive();
        assertThat(many).isLessThan(1.1 * few);
    }

    private long zigzagVisits(double toothM, int vertices) {
        double[] xy = new double[2 * vertices];
        for (int vertex = 0; vertex < vertices; vertex++) {
            xy[2 * vertex] = toothM * vertex;
            xy[2 * vertex + 1] = toothM * (vertex % 2);
        }
        Trace trace = Trace.of(Line.ofXy(xy));
        finder.find(trace, LARGE_SWEEP_M);
        return trace.visits();
    }

    private long visits(double straightM, int vertices) {
        Drawing drawing = Drawing.heading(0);
        int steps = (int) (straightM / 2);
        for (int drawn = 0, bend = 0; drawn < vertices; drawn += steps + 10, bend++) {
            drawing.straight(straightM, steps).arc(bend % 2 == 0 ? 30 : -30, 20, 10);
        }
        Trace trace = Trace.of(drawing.line(0.04, 5));
        finder.find(trace, LARGE_SWEEP_M);
        return trace.visits() * vertices / trace.size();
    }

    static void liesInOrder(List<Bend> bends, double lineLengthM) {
        double freeM = 0;
        for (Bend bend : bends) {
            assertThat(bend.startM()).isGreaterThanOrEqualTo(freeM - 1e-9);
            freeM = bend.startM() + bend.arcLengthM();
        }
        assertThat(freeM).isLessThanOrEqualTo(lineLengthM + 1e-9);
    }

    private List<Bend> find(Line line) {
        return finder.find(line, FOUR_INCH_MM).list();
    }
}
