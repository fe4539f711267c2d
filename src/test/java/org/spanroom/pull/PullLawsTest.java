package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.pull.FrictionSet;
import org.spanroom.model.pull.PullForces;

/**
 * What is true of every way, load and friction, over seeded random ones: level; rolling, with crests and sags, less steep than
 * friction holds; and steep, with straights on which things slide by themselves.
 */
class PullLawsTest {
    private static final int CUTS = 60;

    static LongStream seeds() {
        return LongStream.range(0, 300);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void forcesNeverRiseAsLengthComesOutAndEndAtZero(long seed) {
        forcesNeverRise(new Draw(seed, Ground.LEVEL));
        forcesNeverRise(new Draw(seed, Ground.ROLLING));
    }

    /** Not so on steep ground: there the cable's own weight holds part of it, until the innerduct is off that part. */
    private static void forcesNeverRise(Draw draw) {
        PullForces last = draw.run(draw.way);
        double totalM = draw.way.totalM();
        for (int i = 1; i <= CUTS; i++) {
            PullSegments left = draw.way.without(totalM * i / CUTS);
            PullForces now = draw.run(left);
            assertThat(left.totalM()).isCloseTo(totalM - totalM * i / CUTS, within(1e-9 * totalM));
            assertThat(now.pullN()).as("%s, cut %d", draw.ground, i).isLessThanOrEqualTo(last.pullN() + 1e-9);
            assertThat(now.holdN()).as("%s, cut %d", draw.ground, i).isLessThanOrEqualTo(last.holdN() + 1e-9);
            last = now;
        }
        assertThat(last.pullN()).isCloseTo(0, within(1e-9));
        assertThat(last.holdN()).isCloseTo(0, within(1e-9));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void cableWithoutWeightIsNotHeldAndAddsNothing(long seed) {
        var draw = new Draw(seed, Ground.STEEP);
        Load l = draw.load;

        PullForces light =
                draw.run(draw.way, new Load(0, l.bodyNPerM(), l.neighborNPerM(), l.wedgeRatio(), true, 1, 9));
        PullForces none =
                draw.run(draw.way, new Load(0, l.bodyNPerM(), l.neighborNPerM(), l.wedgeRatio(), false, 0, 0));

        assertThat(light.holdN()).isZero();
        assertThat(light).isEqualTo(none);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void smoothJacketIsNotHeldAndPullIsThatOfOneBody(long seed) {
        var draw = new Draw(seed, Ground.LEVEL);
        Load l = draw.load;
        var smooth = new FrictionSet(draw.friction.ductRatio(), 0, draw.friction.neighborRatio());

        PullForces moved = draw.run(draw.way, l, smooth);
        PullForces ordinary =
                draw.run(draw.way, new Load(0, l.bodyNPerM(), l.neighborNPerM(), l.wedgeRatio(), false, 0, 0), smooth);

        assertThat(moved.holdN()).isZero();
        assertThat(moved.pullN()).isEqualTo(ordinary.pullN());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void outerFrictionIsWhatPullAndDragHaveOverTheHold(long seed) {
        var draw = new Draw(seed, Ground.LEVEL);
        var passes = new TwoPasses(draw.way, new TwoPasses.Passing(draw.wander, false, 7));

        passes.run(draw.load, draw.friction);

        double leastN = draw.friction.ductRatio() * draw.load.bodyNPerM() * draw.way.totalM();
        assertThat(passes.pullN() + 7 - passes.holdN()).isGreaterThanOrEqualTo(leastN * (1 - 1e-12));
        assertThat(passes.holdN()).isGreaterThan(7);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void mirrorOfAMirrorIsTheWay(long seed) {
        var draw = new Draw(seed, Ground.STEEP);

        PullForces twice = draw.run(draw.way.reversed().reversed());

        assertThat(twice).isEqualTo(draw.run(draw.way));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void twiceTheWeightTakesTwiceTheForce(long seed) {
        var draw = new Draw(seed, Ground.STEEP);
        Load l = draw.load;
        var heavier =
                new Load(2 * l.cableNPerM(), 2 * l.bodyNPerM(), 2 * l.neighborNPerM(), l.wedgeRatio(), true, 1, 9);

        PullForces once = draw.run(draw.way);
        PullForces twice = draw.run(draw.way, heavier);

        assertThat(twice.pullN()).isCloseTo(2 * once.pullN(), within(1e-9 * (1 + once.pullN())));
        assertThat(twice.holdN()).isCloseTo(2 * once.holdN(), within(1e-9 * (1 + once.holdN())));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void sectionsCutInTwoTakeTheSameForces(long seed) {
        var draw = new Draw(seed, Ground.LEVEL);
        Load alone = new Load(draw.load.cableNPerM(), draw.load.bodyNPerM(), 0, 1.2, true, 1, 9);
        var halves = new PullSegments();
        for (int i = 0; i < draw.way.count; i++) {
            for (int half = 0; half < 2; half++) {
                halves.addBend(
                        draw.way.lengthM[i] / 2, draw.way.turnRad[i] / 2, draw.way.radiusM[i], draw.way.sineRatio[i]);
            }
        }

        PullForces whole = draw.run(draw.way, alone);
        PullForces cut = draw.run(halves, alone);

        assertThat(cut.pullN()).isCloseTo(whole.pullN(), within(1e-9 * whole.pullN()));
        assertThat(cut.holdN()).isCloseTo(whole.holdN(), within(1e-9 * whole.holdN()));
    }

    /** Up a slope of 1 in 10 round a bend, by hand: 5 N/m over 57 m, of which the bend is 7, lifted by a tenth of that. */
    @Test
    void withoutFrictionUphillTakesTheWeightTimesTheRise() {
        var hill = new PullSegments();
        hill.addStraight(30, 0.1);
        hill.addBend(7, 1.4, 5, 0.1);
        hill.addStraight(20, 0.1);
        for (boolean simpleCapstan : new boolean[] {false, true}) {
            var passes = new TwoPasses(hill, new TwoPasses.Passing(0, simpleCapstan, 0));

            passes.run(new Load(1, 5, 0, 1, true, 1, 9), new FrictionSet(0, 0, 0));

            // The cable hangs slack below the pulling end: nothing holds it but its own weight.
            assertThat(passes.holdN()).isZero();
            assertThat(passes.pullN()).isCloseTo(5 * 5.7, within(1e-9));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void moreFrictionNeverTakesLessForce(long seed) {
        var draw = new Draw(seed, Ground.LEVEL);
        FrictionSet f = draw.friction;
        var rougher = new FrictionSet(f.ductRatio() + 0.1, f.jacketRatio() + 0.1, f.neighborRatio() + 0.1);

        PullForces rough = draw.run(draw.way, draw.load, rougher);
        PullForces smooth = draw.run(draw.way);

        assertThat(rough.pullN()).isGreaterThan(smooth.pullN());
        assertThat(rough.holdN()).isGreaterThan(smooth.holdN());
    }

    private enum Ground {
        LEVEL(0),
        ROLLING(0.08),
        STEEP(0.4);

        private final double steepestRad;

        Ground(double steepestRad) {
            this.steepestRad = steepestRad;
        }
    }

    /** One seed's way, load and friction. */
    private static final class Draw {
        final Ground ground;
        final Random random;
        final PullSegments way = new PullSegments();
        final Load load;
        final FrictionSet friction;
        final double wander;

        Draw(long seed, Ground ground) {
            this.ground = ground;
            random = new Random(seed);
            int pieces = 1 + random.nextInt(6);
            double slope = between(-ground.steepestRad, ground.steepestRad);
            way.addStraight(between(1, 60), Math.sin(slope));
            for (int i = 0; i < pieces; i++) {
                double next = between(-ground.steepestRad, ground.steepestRad);
                if (ground == Ground.ROLLING && random.nextBoolean()) {
                    way.addVertical(slope, next, between(1, 15));
                } else {
                    double turn = between(0.05, 2);
                    way.addBend(turn * between(0.5, 12), turn, 1, 0);
                }
                slope = next;
                way.addStraight(between(1, 60), Math.sin(slope));
            }
            double cable = between(0.3, 5);
            load = new Load(cable, cable + between(1, 10), between(0, 10), between(1, 1.5), true, 1, 9);
            friction = new FrictionSet(between(0.1, 0.6), between(0.1, 0.5), between(0.1, 0.5));
            wander = random.nextBoolean() ? 0.0103 : 0;
        }

        PullForces run(PullSegments sections) {
            return run(sections, load, friction);
        }

        PullForces run(PullSegments sections, Load carried) {
            return run(sections, carried, friction);
        }

        PullForces run(PullSegments sections, Load carried, FrictionSet rubbing) {
            var passes = new TwoPasses(sections, new TwoPasses.Passing(wander, false, 0));
            passes.run(carried, rubbing);
            return passes.forces();
        }

        private double between(double least, double most) {
            return least + random.nextDouble() * (most - least);
        }
    }
}
