package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Angle;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.pull.PullSettings;

class SegmentCutterTest {
    private static final Duct DUCT = PullCase.ductWith(PullCase.exampleInnerduct("i"));
    private static final PullSettings SETTINGS = ShippedConfig.get().pull();

    @Test
    void straightsAndBendsAddUpToTheSpan() {
        PullSegments way = cut(PullCase.span(DUCT, 150), PullCase.bends(30, 45, 1, 100, 90, 2));

        assertThat(way.count).isEqualTo(5);
        assertThat(way.totalM()).isCloseTo(150, within(1e-9));
        assertThat(way.lengthM[0]).isCloseTo(30 - Math.PI / 8, within(1e-9));
        assertThat(way.turnRad[1]).isCloseTo(Math.PI / 4, within(1e-12));
        assertThat(way.radiusM[3]).isEqualTo(2);
    }

    @Test
    void recordedLengthStretchesStraightsButNoBend() {
        PullSegments way = cut(PullCase.span(DUCT, 200, 150, new double[0]), PullCase.bends(50, 90, 2));

        double arc = Math.PI;
        double stretch = (200 - arc) / (150 - arc);
        assertThat(way.totalM()).isCloseTo(200, within(1e-9));
        assertThat(way.lengthM[1]).isCloseTo(arc, within(1e-9));
        assertThat(way.lengthM[0]).isCloseTo((50 - arc / 2) * stretch, within(1e-9));
    }

    @Test
    void bendsThatOverlapFollowOneAnother() {
        PullSegments way = cut(PullCase.span(DUCT, 20), PullCase.bends(9, 90, 3, 11, 90, 3));

        assertThat(way.count).isEqualTo(4);
        assertThat(way.totalM()).isCloseTo(20, within(1e-9));
        assertThat(way.isPlanBend(1)).isTrue();
        assertThat(way.isPlanBend(2)).isTrue();
    }

    @Test
    void arcsLongerThanTheSpanLeaveNoStraight() {
        Bends long90 = new Bends(List.of(new Bend(Angle.ofDeg(90), Bend.Turn.LEFT, 0, 1.5 * Math.PI, 3, false)));

        PullSegments way = cut(PullCase.span(DUCT, 3), long90);

        assertThat(way.count).isEqualTo(1);
        assertThat(way.totalM()).isCloseTo(1.5 * Math.PI, within(1e-9));
    }

    @Test
    void curveThatTurnsLessThanAStraightWandersTurnsAsMuch() {
        Bends gentle = new Bends(List.of(new Bend(Angle.ofDeg(5), Bend.Turn.LEFT, 20, 100, 1000, false)));

        PullSegments way = cut(PullCase.span(DUCT, 150), gentle);

        assertThat(way.turnRad[1]).isCloseTo(100 * SETTINGS.wanderRadPerM(), within(1e-12));
    }

    @Test
    void steadyGradeIsOneSlope() {
        PullSegments way = cut(PullCase.span(DUCT, 100, 0, 1, 2.05, 3, 4), Bends.NONE);

        assertThat(way.count).isEqualTo(1);
        assertThat(way.sineRatio[0]).isCloseTo(0.04, within(1e-9));
        assertThat(way.riseM(0)).isCloseTo(4, within(1e-9));
    }

    @Test
    void changeOfGradeIsAVerticalBend() {
        PullSegments way = cut(PullCase.span(DUCT, 100, 0, 5, 0), Bends.NONE);

        assertThat(way.count).isEqualTo(3);
        assertThat(way.vertical[1]).isEqualTo(1);
        assertThat(way.turnRad[1]).isCloseTo(2 * Math.asin(0.1), within(1e-12));
        assertThat(way.radiusM[1]).isCloseTo(7.6, within(1e-9));
        assertThat(way.totalM()).isCloseTo(100, within(1e-9));
        assertThat(way.riseM(0) + way.riseM(1) + way.riseM(2)).isCloseTo(0, within(1e-9));
        assertThat(way.riseM(0)).isPositive();
        // The slope of a vertical bend is that of its two ends.
        assertThat(way.sineRatio[1]).isZero();
    }

    @Test
    void dipIsASagAndIsOneTheOtherWayRoundToo() {
        PullSegments way = cut(PullCase.span(DUCT, 100, 5, 0, 6), Bends.NONE);
        PullSegments back = way.reversed();

        assertThat(way.vertical[1]).isEqualTo(-1);
        assertThat(back.vertical[1]).isEqualTo(-1);
        assertThat(back.fromSlopeRad[1]).isEqualTo(-way.toSlopeRad[1]);
        assertThat(back.riseM(1)).isCloseTo(-way.riseM(1), within(1e-12));
        // By hand: 7.6 m times the difference of the cosines of the slopes 5 in 50 down and 6 in 50 up.
        assertThat(way.riseM(1)).isCloseTo(7.6 * (Math.sqrt(1 - 0.01) - Math.sqrt(1 - 0.0144)), within(1e-9));
    }

    @Test
    void planBendRisesWithTheGround() {
        PullSegments way = cut(PullCase.span(DUCT, 100, 0, 10), PullCase.bends(50, 90, 4));

        assertThat(way.count).isEqualTo(3);
        assertThat(way.sineRatio[1]).isCloseTo(0.1, within(1e-9));
        assertThat(way.isPlanBend(1)).isTrue();
    }

    /** Up 1 in 10 to 50 m, level along a bend to 52 m, down again: the grade changes where the bend begins and ends. */
    @Test
    void gradeThatChangesAtTheEndsOfABendNeedsNoSectionBetween() {
        double[] heights = new double[51];
        for (int i = 0; i < heights.length; i++) {
            heights[i] = i <= 25 ? 0.2 * i : 5 - 0.2 * (i - 26);
        }
        Bends bend = new Bends(List.of(new Bend(Angle.ofDeg(90), Bend.Turn.LEFT, 50, 2, 1.27, false)));

        PullSegments way = cut(PullCase.span(DUCT, 100, heights), bend);

        assertThat(way.count).isEqualTo(3);
        assertThat(Arrays.copyOf(way.lengthM, 3)).containsExactly(new double[] {50, 2, 48}, within(1e-9));
        assertThat(Arrays.copyOf(way.sineRatio, 3)).containsExactly(new double[] {0.1, 0, -0.1}, within(1e-9));
    }

    @Test
    void cornerWithoutLengthRisesNowhere() {
        Bends corner = new Bends(List.of(new Bend(Angle.ofDeg(30), Bend.Turn.LEFT, 40, 0, 0.9, true)));

        PullSegments way = cut(PullCase.span(DUCT, 100, 0, 10), corner);

        assertThat(way.isPlanBend(1)).isTrue();
        assertThat(way.riseM(1)).isZero();
        assertThat(way.totalM()).isCloseTo(100, within(1e-9));
    }

    @Test
    void whatIsOutLeavesNoSectionOfNoLength() {
        PullSegments way = cut(PullCase.span(DUCT, 150), PullCase.bends(30, 45, 1));

        assertThat(way.without(way.lengthM[0]).count).isEqualTo(2);
        assertThat(way.without(way.lengthM[0] - 1).count).isEqualTo(3);
    }

    @Test
    void arraysThatAreJustFullHoldTheWholeWay() {
        var way = new PullSegments();
        for (int i = 0; i < 8; i++) {
            way.addStraight(10, 0);
        }

        assertThat(way.totalM()).isEqualTo(80);
        way.removeFrom(3);
        assertThat(way.totalM()).isEqualTo(30);
        way.addStraight(5, 0);
        assertThat(way.totalM()).isEqualTo(35);
    }

    @Test
    void knotsCloserThanTheirArcsGetTighterVerticalBends() {
        double[] saw = {0, 1, 0, 1, 0, 1, 0};

        PullSegments way = cut(PullCase.span(DUCT, 12, saw), Bends.NONE);

        assertThat(way.totalM()).isCloseTo(12, within(1e-9));
        for (int i = 0; i < way.count; i++) {
            assertThat(way.lengthM[i]).isPositive();
            assertThat(way.radiusM[i]).isLessThan(7.6);
        }
    }

    @Test
    void manyVerticesAreCutInOneGo() {
        double[] hills = new double[5000];
        for (int i = 0; i < hills.length; i++) {
            hills[i] = 2 * Math.sin(i / 40.0);
        }

        PullSegments way = cut(PullCase.span(DUCT, 5000, hills), PullCase.bends(100, 30, 5, 2000, 60, 5));

        assertThat(way.count).isGreaterThan(50);
        assertThat(way.totalM()).isCloseTo(5000, within(1e-6));
    }

    private static PullSegments cut(Span span, Bends bends) {
        return SegmentCutter.cut(span, bends, SETTINGS);
    }
}
