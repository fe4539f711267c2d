package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.pull.Beside;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.FrictionSet;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.PullSettings;

/** The closed forms against the numerical integration of both tensions' balance (Hipparchus, Dormand-Prince 8(5,3)). */
class CoupledEquationsTest {
    private static final double AGREES = 1e-6;

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void bothPassesSolveTheCoupledEquations(long seed) {
        var random = new Random(seed);
        List<CoupledEquations.Piece> way = randomWay(random);
        FrictionSet friction = randomFriction(random);
        Load load = randomLoad(random, random.nextBoolean() ? between(random, 0.1, 12) : 0);
        double wander = random.nextBoolean() ? between(random, 0.001, 0.02) : 0;
        double slitter = random.nextBoolean() ? between(random, 1, 100) : 0;
        var reference = new CoupledEquations(way, load, friction, wander, false);

        var passes = new TwoPasses(sections(way), new TwoPasses.Passing(wander, false, slitter));
        passes.run(load, friction);

        double holdN = reference.holdN(slitter);
        double[] endN = reference.endN(holdN);
        assertThat(passes.holdN()).isCloseTo(holdN, within(AGREES * holdN));
        assertThat(passes.pullN()).isCloseTo(endN[1], within(AGREES * endN[1]));
        // Walked back to the pulling end the cable has the slitter's drag again.
        assertThat(endN[0]).isCloseTo(slitter, within(AGREES * (1 + holdN)));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void wholeAssessmentOfALevelSpanSolvesThem(long seed) {
        var random = new Random(seed);
        Span span =
                PullCase.span(PullCase.ductWith(PullCase.exampleInnerduct("i1"), PullCase.exampleInnerduct("i2")), 300);
        Bends bends = PullCase.bends(
                between(random, 30, 80),
                between(random, 5, 120),
                between(random, 0.5, 8),
                between(random, 120, 180),
                between(random, 5, 120),
                between(random, 0.5, 8),
                between(random, 220, 270),
                between(random, 5, 120),
                between(random, 0.5, 8));
        PullSettings settings = ShippedConfig.get().pull();

        var assessment = new PullAssessor(settings).assess(span, bends);

        for (InnerductPull pull : assessment.pulls()) {
            Load load = PullOrder.of(span.duct(), settings, assessment.pulls().size(), Beside.NONE)
                    .get(pull.turn() - 1)
                    .load();
            for (Friction friction : Friction.values()) {
                for (SpanEnd end : SpanEnd.values()) {
                    var reference = new CoupledEquations(
                            levelWay(bends, 300, end),
                            load,
                            settings.friction().of(friction),
                            settings.wanderRadPerM(),
                            false);
                    double holdN = reference.holdN(0);
                    double pullN = reference.endN(holdN)[1];
                    var forces = pull.from(end).forces(friction);
                    assertThat(forces.holdN()).isCloseTo(holdN, within(AGREES * holdN));
                    assertThat(forces.pullN()).isCloseTo(pullN, within(AGREES * pullN));
                }
            }
        }
    }

    /** Half of the neighbors' drag before a bend and half after it represents drag all along it: within half a percent. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void neighborsDragAtTheEndsOfABendStandsForDragAlongIt(long seed) {
        var random = new Random(seed);
        List<CoupledEquations.Piece> way = randomWay(random);
        FrictionSet friction = randomFriction(random);
        Load load = randomLoad(random, between(random, 0.1, 5));

        var passes = new TwoPasses(sections(way), new TwoPasses.Passing(0, false, 0));
        passes.run(load, friction);

        var reference = new CoupledEquations(way, load, friction, 0, true);
        double pullN = reference.endN(reference.holdN(0))[1];
        assertThat(passes.pullN()).isCloseTo(pullN, within(0.005 * pullN));
    }

    /** A sag that the tension lifts out of, and one that it does not, in the body pass; the weight is 5 N/m on 8 m. */
    @ParameterizedTest(name = "{0} N, slopes {1} to {2}")
    @CsvSource({"200, -0.08, 0.06", "90, 0, 0.1", "90, -0.1, 0", "4, -0.05, 0.05", "10, 0, 0.1", "15, -0.1, 0"})
    void sagSolvesItsBalanceOnEitherWall(double tensionN, double fromRad, double toRad) {
        var friction = new FrictionSet(0.35, 0, 0);
        var sag = new CoupledEquations.Piece(8 * (toRad - fromRad), 0, fromRad, toRad);
        var load = new Load(0, 5, 0, 1, false, 0, 0);

        double after = PullFormulas.afterVerticalBend(tensionN, 0.35, fromRad, toRad, 8 * 5, 8 * 5);

        var reference = new CoupledEquations(List.of(sag), load, friction, 0, true);
        double[] end = reference.endN(tensionN);
        assertThat(after).isCloseTo(end[0] + end[1], within(AGREES * after));
    }

    /** Slopes within 8 % and friction of at least 0.15, so that nothing slides by itself: there both set 0. */
    private static List<CoupledEquations.Piece> randomWay(Random random) {
        var way = new ArrayList<CoupledEquations.Piece>();
        double slope = between(random, -0.08, 0.08);
        way.add(new CoupledEquations.Piece(between(random, 1, 80), 0, slope, slope));
        int bends = random.nextInt(5);
        for (int i = 0; i < bends; i++) {
            if (random.nextBoolean()) {
                double turn = between(random, 0.05, 2);
                way.add(new CoupledEquations.Piece(turn * between(random, 0.5, 10), turn, 0, 0));
                slope = between(random, -0.08, 0.08);
            } else {
                double next = between(random, -0.08, slope - 0.001);
                way.add(new CoupledEquations.Piece((slope - next) * between(random, 2, 20), 0, slope, next));
                slope = next;
            }
            way.add(new CoupledEquations.Piece(between(random, 1, 80), 0, slope, slope));
        }
        return way;
    }

    private static FrictionSet randomFriction(Random random) {
        return new FrictionSet(between(random, 0.15, 0.5), between(random, 0.15, 0.5), between(random, 0.15, 0.5));
    }

    private static Load randomLoad(Random random, double neighborNPerM) {
        double cable = between(random, 0.3, 5);
        return new Load(cable, cable + between(random, 1, 10), neighborNPerM, between(random, 1, 1.5), true, 1, 12);
    }

    private static PullSegments sections(List<CoupledEquations.Piece> way) {
        var sections = new PullSegments();
        for (CoupledEquations.Piece piece : way) {
            if (piece.turnRad() > 0) {
                sections.addBend(piece.lengthM(), piece.turnRad(), piece.lengthM() / piece.turnRad(), 0);
            } else if (piece.isVertical()) {
                double radius = piece.lengthM() / Math.abs(piece.toSlopeRad() - piece.fromSlopeRad());
                sections.addVertical(piece.fromSlopeRad(), piece.toSlopeRad(), radius);
            } else {
                sections.addStraight(piece.lengthM(), Math.sin(piece.fromSlopeRad()));
            }
        }
        return sections;
    }

    private static List<CoupledEquations.Piece> levelWay(Bends bends, double lengthM, SpanEnd pullingEnd) {
        var way = new ArrayList<CoupledEquations.Piece>();
        double atM = 0;
        for (Bend bend : bends.list()) {
            way.add(new CoupledEquations.Piece(bend.startM() - atM, 0, 0, 0));
            way.add(new CoupledEquations.Piece(
                    bend.arcLengthM(), bend.deflection().rad(), 0, 0));
            atM = bend.startM() + bend.arcLengthM();
        }
        way.add(new CoupledEquations.Piece(lengthM - atM, 0, 0, 0));
        if (pullingEnd == SpanEnd.A) {
            Collections.reverse(way);
        }
        return way;
    }

    private static double between(Random random, double least, double most) {
        return least + random.nextDouble() * (most - least);
    }
}
