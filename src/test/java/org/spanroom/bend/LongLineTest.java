package org.spanroom.bend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.corpus.HostileLine;
import org.spanroom.model.Line;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.BendSettings;

/** Lines of tens of thousands of vertices: how much work they are, and that they are still read right. Counted, not timed. */
class LongLineTest {
    private static final BendSettings SETTINGS = ShippedConfig.get().bend();
    private static final double SWEEP_M = 0.9;
    private static final int FEW = StretchNoise.FEWEST_VERTICES;

    /** What corners dropped one after another may look at in all, in each of up to six rounds, whatever the line. */
    private static final double DROPPING = 6 * 200e6;

    private final BendFinder finder = new BendFinder(SETTINGS);

    @ParameterizedTest(name = "{0}")
    @EnumSource(HostileLine.class)
    void workGrowsInProportionToTheVerticesWhateverTheShape(HostileLine shape) {
        long few = visits(shape.line(FEW));
        long many = visits(shape.line(2 * FEW));

        assertThat(many).isLessThanOrEqualTo((long) (2.2 * few) + 100L * FEW);
        assertThat((double) many).isLessThan(2500.0 * 2 * FEW + DROPPING);
    }

    /** Shapes that are read under several kinds of noise: once only where the vertices are so many that stretches show it. */
    @ParameterizedTest(name = "{0}")
    @EnumSource(
            value = HostileLine.class,
            names = {"DRIFTING_HEADING", "DRIFTING_OFFSET"})
    void aVeryLongLineIsReadOnce(HostileLine shape) {
        long below = visits(shape.line(FEW - 1));
        long above = visits(shape.line(FEW));

        assertThat((double) above).isLessThan(0.8 * below);
    }

    @Test
    void stretchesShowIndependentNoise() {
        Noise noise = shown(straight(0.08, 0));

        assertThat(noise.wanders()).isFalse();
        assertThat(noise.sigmaM).isCloseTo(0.08, within(0.003));
    }

    @Test
    void stretchesShowWanderingNoise() {
        Noise noise = shown(straight(0.25, 40));

        assertThat(noise.wanders()).isTrue();
        assertThat(noise.sigmaM).isCloseTo(0.25, within(0.06));
        assertThat(noise.wanderM).isBetween(20.0, 80.0);
    }

    @Test
    void stretchesShowThatVerticesAreExact() {
        Noise noise = shown(Trace.of(HostileLine.SPIRAL.line(FEW)));

        assertThat(noise.sigmaM).isCloseTo(NoiseLevel.leastM(SETTINGS), within(1e-9));
    }

    @Test
    void bendsOfAVeryLongLineAreFound() {
        Drawing drawing = Drawing.heading(0);
        for (int bend = 0; bend < 24; bend++) {
            drawing.straight(1000, 1000).arc(bend % 2 == 0 ? 30 : -30, 20, 20);
        }
        Trace trace = Trace.of(drawing.straight(100, 100).line(0.04, 5));

        assertThat(StretchNoise.suffices(trace)).isTrue();
        List<Bend> bends = finder.find(trace, SWEEP_M).list();
        assertThat(bends)
                .hasSize(24)
                .allSatisfy(bend -> assertThat(bend.deflection().deg()).isCloseTo(30, within(0.5)));
        // Noise hides the radius of some.
        assertThat(bends.stream().filter(bend -> !bend.radiusAssumed()))
                .hasSizeGreaterThan(8)
                .allSatisfy(bend -> assertThat(bend.radiusM()).isCloseTo(20, within(3.0)));
    }

    /** Returns the noise that stretches show where the line as a whole says nothing of it. */
    private static Noise shown(Trace trace) {
        double priorM = NoiseLevel.priorM(SETTINGS);
        return StretchNoise.of(trace, Noise.independent(100 * priorM, priorM), SETTINGS);
    }

    private long visits(Line line) {
        Trace trace = Trace.of(line);
        finder.find(trace, SWEEP_M);
        return trace.visits();
    }

    /** Draws a straight with a vertex every 5 m, each off sideways by noise of a deviation that is correlated over a distance. */
    private static Trace straight(double sigmaM, double wanderM) {
        var random = new Random(3);
        double memory = wanderM > 0 ? Math.exp(-5 / wanderM) : 0;
        double[] xy = new double[2 * FEW];
        double offM = sigmaM * random.nextGaussian();
        for (int vertex = 0; vertex < FEW; vertex++) {
            xy[2 * vertex] = 5.0 * vertex;
            xy[2 * vertex + 1] = offM;
            offM = memory * offM + Math.sqrt(1 - memory * memory) * sigmaM * random.nextGaussian();
        }
        return Trace.of(Line.ofXy(xy));
    }
}
