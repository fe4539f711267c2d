package org.spanroom.program.bound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.pipeline.NativeSolver;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.PieceCost;
import org.spanroom.program.design.Spread;

/** Laws of the bound on thousands of networks that are small enough to try every design. */
class LowerBoundLawTest {
    private static final int A_BLOCK = 250;

    /** Blocks of seeds; the failing seed is in the message. */
    static LongStream blocks() {
        return LongStream.range(0, 16).map(block -> block * A_BLOCK);
    }

    @ParameterizedTest(name = "seeds from {0}")
    @MethodSource("blocks")
    void reductionKeepsTheLeastCost(long first) {
        for (long seed = first; seed < first + A_BLOCK; seed++) {
            DesignProblem problem = SmallProblems.draw(seed);
            double least = Enumeration.least(problem);

            double reduced = Enumeration.least(Reduction.of(problem));

            if (Double.isInfinite(least)) {
                assertThat(reduced).as("seed %d", seed).isInfinite();
            } else {
                assertThat(reduced).as("seed %d", seed).isCloseTo(least, within(1e-6));
            }
        }
    }

    @ParameterizedTest(name = "seeds from {0}")
    @MethodSource("blocks")
    void noBoundIsAboveTheLeastCost(long first) {
        for (long seed = first; seed < first + A_BLOCK; seed++) {
            DesignProblem problem = SmallProblems.draw(seed);
            double least = Enumeration.least(problem);
            for (int ends = 0; ends <= 3; ends += 3) {
                LagrangeBound bound = bound(problem, ends);
                bound.start();
                assertThat(bound.evaluate()).as("start, seed %d", seed).isLessThanOrEqualTo(least);

                bound.run(least, 40, DesignBound.FIRST_STEP, true, () -> false);

                assertThat(bound.bestMoney()).as("seed %d, ends %d", seed, ends).isLessThanOrEqualTo(least);
            }
        }
    }

    /** Cases leave out no design. With few steps before, so that there is a gap to split. */
    @ParameterizedTest(name = "seeds from {0}")
    @MethodSource("blocks")
    void noBoundByCasesIsAboveTheLeastCost(long first) {
        int raised = 0;
        for (long seed = first; seed < first + A_BLOCK; seed++) {
            DesignProblem problem = SmallProblems.draw(seed);
            double least = Enumeration.least(problem);
            TrunkNetwork network = network(problem, seed % 2 == 0 ? 0 : 3);
            var root = new LagrangeBound(network, Spread.ON_ONE_THREAD);
            root.run(least, 6, DesignBound.FIRST_STEP, true, () -> false);

            var branching = new Branching(network, root, seed % 3 == 0 ? Double.POSITIVE_INFINITY : least);
            branching.run(40, Spread.ON_ONE_THREAD, () -> false);

            assertThat(branching.money()).as("seed %d", seed).isLessThanOrEqualTo(least);
            assertThat(branching.money()).as("seed %d", seed).isGreaterThanOrEqualTo(root.bestMoney());
            raised += branching.money() > root.bestMoney() + 1e-3 * least ? 1 : 0;
        }
        assertThat(raised).isPositive();
    }

    /** Not only prices that steps lead to: the bound holds at any. */
    @ParameterizedTest(name = "seeds from {0}")
    @MethodSource("blocks")
    void boundHoldsAtAnyPrices(long first) {
        for (long seed = first; seed < first + A_BLOCK; seed++) {
            DesignProblem problem = SmallProblems.draw(seed);
            var random = new Random(seed);
            LagrangeBound bound = bound(problem, 3);
            for (int draw = 0; draw < 5; draw++) {
                for (double[] prices : bound.prices().now()) {
                    for (int slot = 0; slot < prices.length; slot++) {
                        prices[slot] = random.nextInt(3) == 0 ? 0 : random.nextDouble() * 40;
                    }
                }
                assertThat(bound.evaluate()).as("seed %d", seed).isLessThanOrEqualTo(Enumeration.least(problem));
            }
        }
    }

    /** With settings as they are used; equal to the least cost in most networks of this size. */
    @Test
    void integerProgramIsNotAboveTheLeastCostAndMostlyReachesIt() {
        assumeTrue(NativeSolver.load().isEmpty(), "no library on this platform");
        int reached = 0;
        int finite = 0;
        for (long seed = 0; seed < 1000; seed++) {
            DesignProblem problem = SmallProblems.draw(seed);
            double least = Enumeration.least(problem);
            ReducedNetwork reduced = Reduction.of(problem);

            double knownMoney = seed % 2 == 0 ? Double.POSITIVE_INFINITY : least * (1 + seed % 7 * 0.05);
            OptionalDouble bound = DesignBound.program(
                            reduced,
                            RootedDemand.of(reduced),
                            BoundSettings.DEFAULT.withSteps(20),
                            knownMoney,
                            Spread.ON_ONE_THREAD)
                    .money();

            assertThat(bound.orElse(0)).as("seed %d", seed).isLessThanOrEqualTo(least);
            finite += Double.isInfinite(least) || least == 0 ? 0 : 1;
            reached += least > 0 && bound.orElse(0) > least * (1 - 1e-4) ? 1 : 0;
        }
        assertThat(reached).as("of %d", finite).isGreaterThan(finite * 9 / 10);
    }

    /** What no way leads to is impossible; other reasons need not be seen. */
    @Test
    void boundIsInfiniteWhereAMustHasNoWayAlone() {
        for (long seed = 0; seed < 1000; seed++) {
            DesignProblem problem = SmallProblems.draw(seed);
            boolean impossible = problem.demands().stream()
                    .filter(Demand::isMust)
                    .anyMatch(demand -> Double.isInfinite(
                            Enumeration.least(new DesignProblem(problem.places(), problem.pieces(), List.of(demand)))));

            double money = whole(problem, Spread.ON_ONE_THREAD).money();

            assertThat(Double.isInfinite(money)).as("seed %d", seed).isEqualTo(impossible);
        }
    }

    /** The last bit included. */
    @Test
    void boundDoesNotDependOnThreads() {
        for (long seed = 0; seed < 200; seed++) {
            DesignProblem problem = SmallProblems.draw(seed);

            assertThat(whole(problem, ON_MANY_THREADS)).isEqualTo(whole(problem, Spread.ON_ONE_THREAD));
        }
    }

    private static final Spread ON_MANY_THREADS = new Spread() {
        @Override
        public <W> void over(int count, Supplier<W> worker, ObjIntConsumer<W> work) {
            IntStream.range(0, count).parallel().forEach(i -> work.accept(worker.get(), i));
        }
    };

    private static DesignBound whole(DesignProblem problem, Spread spread) {
        return DesignBound.of(
                problem,
                BoundSettings.DEFAULT.withSteps(5).withCases(20),
                Double.POSITIVE_INFINITY,
                false,
                spread,
                () -> false);
    }

    /** The search of solutions and the bound calculate the cost of a piece in two ways; they must agree. */
    @Test
    void tablesAgreeWithTheCostOfPieces() {
        for (long seed = 0; seed < 500; seed++) {
            DesignProblem problem = SmallProblems.draw(seed);
            var box = new CountBox(3, 2, 2);
            for (var piece : problem.pieces()) {
                double[] table = new BinCost(piece).table(box, new int[] {1, 2, 3});
                var cost = new PieceCost(piece);
                for (int i = 0; i < table.length; i++) {
                    double money = cost.money(0, box.count(i, 0), box.count(i, 1), box.count(i, 2));
                    if (Double.isInfinite(money)) {
                        assertThat(table[i]).isInfinite();
                    } else {
                        assertThat(table[i]).as("seed %d, %s", seed, piece).isCloseTo(money, within(1e-9));
                    }
                }
            }
        }
    }

    private static LagrangeBound bound(DesignProblem problem, int ends) {
        return new LagrangeBound(network(problem, ends), Spread.ON_ONE_THREAD);
    }

    private static TrunkNetwork network(DesignProblem problem, int ends) {
        ReducedNetwork reduced = Reduction.of(problem);
        List<RootedDemand> demands = RootedDemand.of(reduced);
        return new TrunkNetwork(reduced, demands, Absorption.of(reduced, demands, ends));
    }
}
