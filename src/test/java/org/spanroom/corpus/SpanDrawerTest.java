package org.spanroom.corpus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.corpus.TruePath.Pose;

/** The corpus is what it says it is. */
class SpanDrawerTest {
    static IntStream numbers() {
        return IntStream.range(0, 150);
    }

    @ParameterizedTest(name = "span {0}")
    @MethodSource("numbers")
    void bendsAreAsTheIssueAsks(int number) {
        DrawnSpan span = SpanDrawer.draw(3, number);

        assertThat(span.bends()).isNotEmpty().allSatisfy(bend -> {
            assertThat(Math.toDegrees(Math.abs(bend.turnRad()))).isBetween(5.0, 90.0);
            assertThat(bend.radiusM()).isBetween(0.9, 60.0);
        });
        assertThat(span.style().noiseM()).isBetween(0.0, 0.15);
        assertThat(span.style().chordM()).isBetween(0.3, 5.0);
    }

    @ParameterizedTest(name = "span {0}")
    @MethodSource("numbers")
    void verticesLieAtTheirPlacesButForTheNoise(int number) {
        DrawnSpan span = SpanDrawer.draw(3, number);

        assertThat(span.vertices()).hasSize(span.drawn().size());
        for (int i = 0; i < span.drawn().size(); i++) {
            Pose place = span.vertices().get(i).on(span.path());
            double awayM =
                    Math.hypot(span.drawn().x(i) - place.xM(), span.drawn().y(i) - place.yM());
            assertThat(awayM).isLessThanOrEqualTo(5.5 * span.style().noiseM() + 1e-9);
        }
    }

    /** The heading at the end less that at the beginning is the sum of all turns: the path has no kinks. */
    @ParameterizedTest(name = "span {0}")
    @MethodSource("numbers")
    void turnsAddUpToTheChangeOfHeading(int number) {
        DrawnSpan span = SpanDrawer.draw(3, number);
        int last = span.path().pieces().size() - 1;

        double turnedRad =
                span.path().at(last, 1).headingRad() - span.path().at(0, 0).headingRad();

        assertThat(turnedRad)
                .isCloseTo(
                        span.bends().stream()
                                .mapToDouble(bend -> bend.turnRad())
                                .sum(),
                        within(1e-9));
    }

    /** Twice the noise halves what an ideal reader knows; without noise he knows all that the vertices show. */
    @ParameterizedTest(name = "span {0}")
    @MethodSource("numbers")
    void anIdealReaderKnowsLessWithMoreNoise(int number) {
        DrawnSpan span = SpanDrawer.draw(3, number);
        double limitRad = Math.toRadians(0.2);

        double quiet = new IdealReader(withNoise(span, 0.02)).chanceOfTotalWithin(limitRad);
        double loud = new IdealReader(withNoise(span, 0.04)).chanceOfTotalWithin(limitRad);

        assertThat(loud).isBetween(0.0, 1.0).isLessThanOrEqualTo(quiet + 1e-9);
        assertThat(new IdealReader(withNoise(span, 0.02)).chanceOfTotalWithin(limitRad / 2))
                .isCloseTo(loud, within(0.02));
    }

    /** Lag-one correlation over many spans against exp(-d / wander), d the step; each sum has its own standard error. */
    @Test
    void wanderingNoiseLeavesNeighborsOffTogether() {
        double together = 0;
        double expected = 0;
        double squares = 0;
        int count = 0;
        for (int number = 0; number < 60; number++) {
            DrawnSpan span = SpanDrawer.draw(3, number, DrawnSpan.Shape.WANDERING);
            double varianceM2 = span.style().noiseM() * span.style().noiseM();
            for (int i = 1; i < span.drawn().size(); i++) {
                Pose here = span.vertices().get(i).on(span.path());
                Pose last = span.vertices().get(i - 1).on(span.path());
                double offM = span.drawn().x(i) - here.xM();
                double lastM = span.drawn().x(i - 1) - last.xM();
                double stepM = Math.hypot(here.xM() - last.xM(), here.yM() - last.yM());
                together += offM * lastM / varianceM2;
                expected += Math.exp(-stepM / span.style().wanderM());
                squares += offM * offM / varianceM2;
                count++;
            }
        }
        assertThat(squares / count).isCloseTo(1, within(0.15));
        assertThat(together / count).isCloseTo(expected / count, within(0.15));
    }

    /** Wandering noise of no reach at all is the common noise: the ideal reader's two ways must agree. */
    @ParameterizedTest(name = "span {0}")
    @MethodSource("fewNumbers")
    void anIdealReaderOfShortWanderKnowsWhatOneOfIndependentVerticesKnows(int number) {
        DrawnSpan span = SpanDrawer.draw(3, number);
        double limitRad = Math.toRadians(0.5);
        var old = span.style();
        var style = new DrawnSpan.Style(
                old.shape(),
                0.1,
                1e-6,
                old.chordM(),
                old.spacingM(),
                old.dropRatio(),
                old.leastRadiusM(),
                old.mostRadiusM());
        var wandering = new DrawnSpan(span.path(), style, span.drawn(), span.vertices(), span.bends());

        assertThat(new IdealReader(wandering).chanceOfTotalWithin(limitRad))
                .isCloseTo(new IdealReader(withNoise(span, 0.1)).chanceOfTotalWithin(limitRad), within(1e-3));
    }

    static IntStream fewNumbers() {
        return IntStream.range(0, 20);
    }

    private static DrawnSpan withNoise(DrawnSpan span, double noiseM) {
        var old = span.style();
        var style = new DrawnSpan.Style(
                old.shape(),
                noiseM,
                old.wanderM(),
                old.chordM(),
                old.spacingM(),
                old.dropRatio(),
                old.leastRadiusM(),
                old.mostRadiusM());
        return new DrawnSpan(span.path(), style, span.drawn(), span.vertices(), span.bends());
    }
}
