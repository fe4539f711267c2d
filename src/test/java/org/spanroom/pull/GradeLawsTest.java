package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Line;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.PullSettings;

/** What is true of the grades of every span, over seeded random ones: no vertical bend where no grade changes. */
class GradeLawsTest {
    private static final PullSettings SETTINGS = ShippedConfig.get().pull();
    private static final Duct DUCT = PullCase.ductWith(PullCase.exampleInnerduct("i"));

    static LongStream seeds() {
        return LongStream.range(0, 400);
    }

    /** Drawn with any number of vertices in any direction, so that its length and the sum of its steps differ by rounding. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aSpanOfOneGradeIsOneStraight(long seed) {
        var random = new Random(seed);
        double lengthM = between(random, 20, 300);
        double riseM = between(random, -0.12, 0.12) * lengthM;
        Span span = sloped(random, lengthM, riseM);

        PullSegments way = SegmentCutter.cut(span, Bends.NONE, SETTINGS);

        assertThat(way.count).isEqualTo(1);
        assertThat(way.isStraight(0)).isTrue();
        assertThat(way.riseM(0)).isCloseTo(riseM, within(1e-9));
        assertThat(way.totalM()).isCloseTo(lengthM, within(1e-9));
    }

    /**
     * The closed form of one straight: dT/ds = b T + a. Of an innerduct with one cable first C from the pulling end to the anchor, then the
     * sum S from the anchor to the pulling end (mechanics of the two passes, see methods).
     */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void itsForcesAreThoseOfTheClosedForm(long seed) {
        var random = new Random(seed);
        double lengthM = between(random, 20, 300);
        double riseM = between(random, -0.12, 0.12) * lengthM;
        Span span = sloped(random, lengthM, riseM);

        InnerductPull pull =
                new PullAssessor(SETTINGS).assess(span, Bends.NONE).pulls().get(0);

        var weights = new Weights(DUCT, SETTINGS);
        double cableNPerM = weights.cablesNPerM(pull.innerduct());
        double bodyNPerM = weights.bodyNPerM(pull.innerduct());
        for (Friction friction : Friction.values()) {
            double jacket = SETTINGS.friction().of(friction).jacketRatio();
            double duct = SETTINGS.friction().of(friction).ductRatio();
            // Out at B: the cable is dragged uphill by the rise as seen from B, so its weight helps where B is higher.
            double holdN = Math.max(0, after(0, jacket, cableNPerM, lengthM, -riseM));
            double bodyN = Math.max(0, after(holdN, duct, bodyNPerM, lengthM, riseM));
            assertThat(pull.fromB().forces(friction).holdN()).isCloseTo(holdN, within(1e-6));
            assertThat(pull.fromB().forces(friction).pullN()).isCloseTo(bodyN, within(1e-6));
        }
    }

    private static double after(
            double tensionN, double frictionRatio, double weightNPerM, double lengthM, double riseM) {
        double sine = riseM / lengthM;
        double a = weightNPerM * (frictionRatio * Math.sqrt(1 - sine * sine) + sine);
        double b = frictionRatio * SETTINGS.wanderRadPerM();
        return (tensionN + a / b) * Math.exp(b * lengthM) - a / b;
    }

    /** The turns are no more than the changes of grade between the vertices, whatever bends are there and wherever vertices are. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void noMoreIsTurnedThanTheGradesChange(long seed) {
        var random = new Random(seed);
        int vertices = 3 + random.nextInt(12);
        double[] xyz = new double[3 * vertices];
        double changesRad = 0;
        double lastRad = Double.NaN;
        for (int i = 1; i < vertices; i++) {
            // Some vertices are on top of one another, or a hair apart.
            double stepM = random.nextInt(4) == 0 ? random.nextInt(2) * 1e-7 : between(random, 5, 60);
            xyz[3 * i] = xyz[3 * i - 3] + stepM;
            xyz[3 * i + 2] = xyz[3 * i - 1] + (stepM > 1 ? between(random, -0.1, 0.1) * stepM : 0);
            double slopeRad = stepM > 1 ? Math.asin((xyz[3 * i + 2] - xyz[3 * i - 1]) / stepM) : lastRad;
            changesRad += Double.isNaN(lastRad) || Double.isNaN(slopeRad) ? 0 : Math.abs(slopeRad - lastRad);
            lastRad = slopeRad;
        }
        double lengthM = xyz[3 * vertices - 3];
        Bends bends = lengthM < 60 || random.nextBoolean()
                ? Bends.NONE
                : PullCase.bends(lengthM / 3, 40, 1, lengthM / 2, 20, 4);

        PullSegments way = SegmentCutter.cut(span(Line.ofXyz(xyz), lengthM), bends, SETTINGS);

        double turnedRad = 0;
        for (int i = 0; i < way.count; i++) {
            turnedRad += way.vertical[i] == 0 ? 0 : way.turnRad[i];
            assertThat(way.vertical[i] == 0 || way.radiusM[i] > 1e-4)
                    .as("section %d of radius %s", i, way.radiusM[i])
                    .isTrue();
        }
        assertThat(turnedRad).isLessThanOrEqualTo(changesRad + 1e-4);
        assertThat(way.totalM()).isCloseTo(lengthM, within(1e-6));
    }

    /** What the mechanism was: a knot a rounding error before the end leaves a level section of no length behind a grade. */
    @Test
    void aKnotAtTheEndLeavesNoSectionBehindIt() {
        Line ground = Line.ofXyz(0, 0, 0, 100, 0, 10, Math.nextUp(100.0), 0, 10);
        for (double lengthM : new double[] {100, Math.nextUp(100.0), 100 + 1e-9, 100 + 9e-4}) {
            PullSegments way = SegmentCutter.cut(span(ground, lengthM), Bends.NONE, SETTINGS);

            assertThat(way.count).as("length %s", lengthM).isEqualTo(1);
            assertThat(way.riseM(0)).isCloseTo(10, within(1e-4));
        }
    }

    private static Span sloped(Random random, double lengthM, double riseM) {
        double direction = between(random, 0, 2 * Math.PI);
        int vertices = 2 + random.nextInt(15);
        double[] shares = random.doubles(vertices).sorted().toArray();
        shares[0] = 0;
        shares[vertices - 1] = 1;
        double[] xyz = new double[3 * vertices];
        for (int i = 0; i < vertices; i++) {
            xyz[3 * i] = 1e4 + shares[i] * lengthM * Math.cos(direction);
            xyz[3 * i + 1] = -2e4 + shares[i] * lengthM * Math.sin(direction);
            xyz[3 * i + 2] = 30 + shares[i] * riseM;
        }
        return span(Line.ofXyz(xyz), lengthM);
    }

    private static Span span(Line ground, double lengthM) {
        double[] lonLat = new double[2 * ground.size()];
        for (int i = 0; i < ground.size(); i++) {
            lonLat[2 * i] = i * 1e-4;
        }
        Span model = PullCase.span(DUCT, lengthM);
        return new Span(
                "span",
                DUCT,
                model.routeIds(),
                model.from(),
                model.to(),
                Line.ofXy(lonLat),
                ground,
                lengthM,
                lengthM,
                0,
                0,
                "");
    }

    private static double between(Random random, double least, double most) {
        return least + random.nextDouble() * (most - least);
    }
}
