package org.spanroom.bend;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Line;
import org.spanroom.model.bend.BendSettings;
import org.spanroom.model.bend.Bends;

/** What settles a line early, and what remembers a fit, changes no digit of what the full fit finds. */
class BendScreenTest {
    private static final BendSettings SETTINGS = ShippedConfig.get().bend();
    private static final int LINES = 400;

    private final BendFinder screening = new BendFinder(SETTINGS);
    private final BendFinder full = new BendFinder(SETTINGS, false);

    static LongStream seeds() {
        return LongStream.range(0, 10);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void shortLinesOfAnyShapeAreReadTheSame(long seed) {
        var random = new Random(seed);
        int bent = 0;
        for (int line = 0; line < LINES; line++) {
            bent += same(wandering(random)).list().isEmpty() ? 0 : 1;
        }
        assertThat(bent).isBetween(LINES / 10, LINES - LINES / 10);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void drawnSpansAreReadTheSame(long seed) {
        var random = new Random(seed);
        int bent = 0;
        for (int line = 0; line < LINES / 4; line++) {
            bent += same(drawn(random)).list().isEmpty() ? 0 : 1;
        }
        assertThat(bent).isGreaterThan(LINES / 10);
    }

    /** A straight is settled early up to this distance off it, and by its noise beyond. */
    @ParameterizedTest(name = "{0} of the least tolerance")
    @ValueSource(doubles = {0, 0.5, 0.999999, 1, 1.000001, 2, 4, 14, 15, 16})
    void straightsAreReadTheSameOnBothSidesOfTheLeastTolerance(double share) {
        double offM = share * NoiseLevel.leastToleranceM(SETTINGS);

        same(Line.ofXy(0, 0, 30, offM, 60, 0, 90, 0));
        same(Line.ofXy(0, 0, 10, 0, 20, 0, 30, offM, 40, 0, 50, 0, 60, -offM, 70, 0, 80, 0));
        same(Line.ofXy(0, 0, -offM, 0, 20, 0, 30, 0));
        same(Line.ofXy(0, 0, 20, 0, 30 + offM, 0, 30, 0));
    }

    @Test
    void linesShorterThanAnyToleranceAreReadTheSame() {
        for (double lengthM : new double[] {0, 1e-4, 0.002, 0.02, 0.1, 0.3, 1}) {
            same(Line.ofXy(0, 0, lengthM / 2, lengthM / 9, lengthM, 0));
            same(Line.ofXy(0, 0, lengthM, 0, 0, 0, lengthM, lengthM));
        }
    }

    private Bends same(Line line) {
        Bends found = screening.find(line, 100);
        assertThat(found).as("%s", line).isEqualTo(full.find(line, 100));
        return found;
    }

    /** A line of 2 to 10 vertices whose turns are mostly slight, sometimes anything, with repeated vertices here and there. */
    private static Line wandering(Random random) {
        int vertices = 2 + random.nextInt(9);
        double[] xy = new double[2 * vertices];
        double headingRad = 2 * Math.PI * random.nextDouble();
        double slightRad = Math.pow(10, -4 * random.nextDouble());
        for (int vertex = 1; vertex < vertices; vertex++) {
            headingRad += random.nextInt(12) == 0 ? 6 * random.nextDouble() : slightRad * random.nextGaussian();
            double stepM = random.nextInt(15) == 0 ? 0 : Math.pow(10, 2.5 * random.nextDouble() - 0.5);
            xy[2 * vertex] = xy[2 * vertex - 2] + stepM * Math.cos(headingRad);
            xy[2 * vertex + 1] = xy[2 * vertex - 1] + stepM * Math.sin(headingRad);
        }
        return Line.ofXy(xy);
    }

    private static Line drawn(Random random) {
        Drawing drawing = Drawing.heading(360 * random.nextDouble());
        for (int bend = random.nextInt(5); bend > 0; bend--) {
            double side = random.nextBoolean() ? 1 : -1;
            drawing.straight(5 + 80 * random.nextDouble(), 1 + random.nextInt(6));
            if (random.nextInt(3) == 0) {
                drawing.turn(side * 90 * random.nextDouble());
            } else {
                drawing.arc(side * (5 + 85 * random.nextDouble()), 1 + 30 * random.nextDouble(), 2 + random.nextInt(9));
            }
        }
        double noiseM = random.nextInt(3) == 0 ? 0 : 0.12 * random.nextDouble();
        return drawing.straight(20, 2).line(noiseM, random.nextLong());
    }
}
