package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.pull.PullCase.FT_M;
import static org.spanroom.pull.PullCase.LBF_N;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.PullForces;
import org.spanroom.model.pull.PullTrace;
import org.spanroom.model.pull.PullTrace.SectionKind;

/**
 * The worked example of pulling an innerduct off its cable: 600 ft, 45-degree bends of 36 in radius centered 150 and 500 ft
 * from A, 1-1/4 SDR 13.5 of 0.263 lb/ft, a cable of 0.080 lb/ft. No published test of this operation exists: the values are
 * derived, by hand and by stepping the coupled equations. Forces in lbf.
 */
class ExtractionExampleTest {
    private static final double WANDER_RAD_PER_FT = Math.PI / 2 / 500;
    private static final Span SPAN = PullCase.span(PullCase.ductWith(PullCase.exampleInnerduct("i1")), 600 * FT_M);
    private static final Bends BENDS = PullCase.bends(150 * FT_M, 45, 3 * FT_M, 500 * FT_M, 45, 3 * FT_M);

    @ParameterizedTest(name = "{0}, wander {1}")
    @CsvSource({
        "LUBRICATED, false, 59.6, 8.0, 58.5, 8.1",
        "DRY, false, 128.8, 17.9, 125.7, 18.7",
        "BAD, false, 218.1, 25.9, 210.9, 27.3",
        "DRY, true, 224.0, 24.6, 220.9, 25.6",
        "LUBRICATED, true, 78.0, 9.3, 76.8, 9.4"
    })
    void bothForcesComeFromBothEnds(
            Friction friction, boolean wander, double pullB, double holdA, double pullA, double holdB) {
        var assessor = new PullAssessor(PullCase.exampleSettings(wander ? WANDER_RAD_PER_FT : 0));

        InnerductPull pull = assessor.assess(SPAN, BENDS).pulls().get(0);

        isClose(pull.fromB().forces(friction), pullB, holdA, 0.051);
        isClose(pull.fromA().forces(friction), pullA, holdB, 0.051);
    }

    @Test
    void dryForcesHoldToTwoDecimals() {
        InnerductPull pull = new PullAssessor(PullCase.exampleSettings(0))
                .assess(SPAN, BENDS)
                .pulls()
                .get(0);

        isClose(pull.fromB().dry(), 128.83, 17.93, 0.0051);
        isClose(pull.fromA().dry(), 125.69, 18.65, 0.0051);
    }

    @Test
    void loadedNeighborOnTopMoreThanDoublesThePull() {
        Span twoInnerducts = PullCase.span(
                PullCase.ductWith(PullCase.exampleInnerduct("i1"), PullCase.exampleInnerduct("i2")), 600 * FT_M);

        List<InnerductPull> pulls = new PullAssessor(PullCase.exampleSettings(0))
                .assess(twoInnerducts, BENDS)
                .pulls();

        isClose(pulls.get(0).fromB().dry(), 311.0, 17.9, 0.051);
        isClose(pulls.get(0).fromA().dry(), 299.6, 18.7, 0.051);
        // The second has only the freed cable on it.
        assertThat(pulls.get(1).neighborNPerM() / LBF_N * FT_M).isCloseTo(0.080, within(1e-6));
    }

    /** Against 653 and 180 lbf: dry 20 and 10 %, with wander 34 and 14 %, with a neighbor 48 and 10 %. */
    @ParameterizedTest(name = "wander {0}, {1} innerducts")
    @CsvSource({"false, 1, 20, 10", "true, 1, 34, 14", "false, 2, 48, 10"})
    void innerductAndCableAreUsedInPart(boolean wander, int innerducts, double innerductPercent, double cablePercent) {
        var duct = innerducts == 1
                ? PullCase.ductWith(PullCase.exampleInnerduct("i1"))
                : PullCase.ductWith(PullCase.exampleInnerduct("i1"), PullCase.exampleInnerduct("i2"));
        var assessor = new PullAssessor(PullCase.exampleSettings(wander ? WANDER_RAD_PER_FT : 0));

        PullTrace trace = assessor.trace(PullCase.span(duct, 600 * FT_M), BENDS, 1, Friction.DRY);

        assertThat(percent(trace, LimitKind.INNERDUCT_STRENGTH)).isCloseTo(innerductPercent, within(0.5));
        assertThat(percent(trace, LimitKind.CABLE_HOLD)).isCloseTo(cablePercent, within(0.5));
    }

    @Test
    void everyBoundaryOfTheTraceAgrees() {
        PullTrace.Way way = new PullAssessor(PullCase.exampleSettings(0))
                .trace(SPAN, BENDS, 1, Friction.DRY)
                .fromB();

        double[] cable = {17.93, 14.36, 11.35, 3.00, 2.37, 0};
        double[] body = {17.93, 35.80, 47.12, 88.86, 116.97, 128.83};
        double[] innerduct = {0, 21.44, 35.77, 85.86, 114.60, 128.83};
        double[] atFt = {0, 148.822, 151.178, 498.822, 501.178, 600};
        assertThat(way.sections()).hasSize(5);
        for (int i = 0; i < cable.length; i++) {
            PullTrace.Point point = i == 0
                    ? way.sections().get(0).near()
                    : way.sections().get(i - 1).far();
            assertThat(point.cableN() / LBF_N).isCloseTo(cable[i], within(0.0051));
            assertThat(point.bodyN() / LBF_N).isCloseTo(body[i], within(0.0051));
            // The source takes this one as the difference of two rounded values.
            assertThat(point.innerductN() / LBF_N).isCloseTo(innerduct[i], within(0.011));
            assertThat(point.atM() / FT_M).isCloseTo(atFt[i], within(0.0006));
        }
        assertThat(way.sections())
                .extracting(PullTrace.Section::kind)
                .containsExactly(
                        SectionKind.STRAIGHT,
                        SectionKind.BEND,
                        SectionKind.STRAIGHT,
                        SectionKind.BEND,
                        SectionKind.STRAIGHT);
        // Pressure on the wall at the second bend 39.0 lb/ft of the center line's radius, on the cable at the first
        // 4.8.
        assertThat(PullFormulas.sidewall(way.sections().get(3).far().bodyN(), 3 * FT_M) / LBF_N * FT_M)
                .isCloseTo(39.0, within(0.051));
        assertThat(PullFormulas.sidewall(way.sections().get(1).near().cableN(), 3 * FT_M) / LBF_N * FT_M)
                .isCloseTo(4.8, within(0.051));
        // Against limits the radius is that of the bend's inside, half a bore of 102.26 mm nearer, and the tension the
        // larger of both ends.
        double insideM = 3 * FT_M - 0.05113;
        assertThat(found(way, LimitKind.INNERDUCT_SIDEWALL) * insideM / LBF_N).isCloseTo(116.97, within(0.0051));
        assertThat(found(way, LimitKind.CABLE_SIDEWALL) * insideM / LBF_N).isCloseTo(14.36, within(0.0051));
    }

    @ParameterizedTest(name = "{0} ft out")
    @CsvSource({
        "0, 128.8, 17.9, 125.7, 18.7",
        "75, 110.1, 16.1, 107.0, 16.9",
        "150, 86.1, 12.8, 80.5, 11.7",
        "300, 53.5, 7.8, 52.0, 8.1",
        "450, 25.1, 4.2, 22.5, 4.0",
        "500, 14.9, 2.7, 14.4, 2.4",
        "550, 7.2, 1.2, 7.2, 1.2",
        "600, 0, 0, 0, 0"
    })
    void bothForcesFallAsLengthComesOut(double outFt, double pullB, double holdA, double pullA, double holdB) {
        PullSegments toB = SegmentCutter.cut(SPAN, BENDS, PullCase.exampleSettings(0));

        isClose(dry(toB.without(outFt * FT_M)), pullB, holdA, 0.051);
        isClose(dry(toB.reversed().without(outFt * FT_M)), pullA, holdB, 0.051);
    }

    @Test
    void traceGivesStartQuarterPointsAndEnd() {
        PullTrace.Way way = new PullAssessor(PullCase.exampleSettings(0))
                .trace(SPAN, BENDS, 1, Friction.DRY)
                .fromB();

        assertThat(way.fallOff())
                .extracting(fall -> Math.round(fall.outM() / FT_M))
                .containsExactly(0L, 150L, 300L, 450L, 600L);
        isClose(way.fallOff().get(2).forces(), 53.5, 7.8, 0.051);
        isClose(way.fallOff().get(4).forces(), 0, 0, 1e-9);
    }

    /** Same weights, radius 3 ft; the blank of the source is left out. */
    @ParameterizedTest(name = "{0} {1} wander {2}")
    @CsvSource({
        "straight, LUBRICATED, false, 48.4, 7.2",
        "straight, DRY, false, 86.4, 14.4",
        "straight, LUBRICATED, true, 62.1, 8.3",
        "straight, DRY, true, 139.5, 19.4",
        "two 90 deg, LUBRICATED, false, 73.3, 9.1",
        "two 90 deg, DRY, false, 199.9, 23.6",
        "two 90 deg, BAD, false, 427.9, 37.8"
    })
    void otherRoutesAgree(String route, Friction friction, boolean wander, double pullLbf, double holdLbf) {
        Bends bends = route.equals("straight")
                ? Bends.NONE
                : PullCase.bends(100 * FT_M, 90, 3 * FT_M, 500 * FT_M, 90, 3 * FT_M);
        var assessor = new PullAssessor(PullCase.exampleSettings(wander ? WANDER_RAD_PER_FT : 0));

        InnerductPull pull = assessor.assess(SPAN, bends).pulls().get(0);

        for (SpanEnd end : SpanEnd.values()) {
            isClose(pull.from(end).forces(friction), pullLbf, holdLbf, 0.051);
        }
    }

    private static PullForces dry(PullSegments way) {
        double cableNPerM = PullCase.EXAMPLE_CABLE_LB_PER_FT * LBF_N / FT_M;
        double bodyNPerM = cableNPerM + PullCase.EXAMPLE_INNERDUCT_LB_PER_FT * LBF_N / FT_M;
        var passes = new TwoPasses(way, new TwoPasses.Passing(0, true, 0));
        passes.run(
                new Load(cableNPerM, bodyNPerM, 0, 1, true, 1, 12.7),
                ShippedConfig.get().pull().friction().dry());
        return passes.forces();
    }

    private static double found(PullTrace.Way way, LimitKind kind) {
        return way.limits().stream()
                .filter(use -> use.kind() == kind)
                .findFirst()
                .orElseThrow()
                .foundSi();
    }

    private static double percent(PullTrace trace, LimitKind kind) {
        return trace.fromB().limits().stream()
                .filter(use -> use.kind() == kind)
                .findFirst()
                .orElseThrow()
                .utilizationPercent();
    }

    private static void isClose(PullForces forces, double pullLbf, double holdLbf, double tolerance) {
        assertThat(forces.pullN() / LBF_N).isCloseTo(pullLbf, within(tolerance));
        assertThat(forces.holdN() / LBF_N).isCloseTo(holdLbf, within(tolerance));
    }
}
