package org.spanroom.program.bound;

import java.lang.management.ManagementFactory;
import java.util.List;
import org.spanroom.pipeline.NativeSolver;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.DesignSearch;
import org.spanroom.program.design.SearchSettings;
import org.spanroom.program.design.Spread;

/**
 * Prints the lower bound of a drawn network as it rises, beside the cost of a design.
 *
 * <p>Arguments: sections, demands, seconds for the bound, seed, iterations of the search. Seconds are of the processor, not of the
 * clock, so that other work on the machine does not count.
 */
final class BoundBench {
    private BoundBench() {}

    public static void main(String[] arguments) {
        int sections = Integer.parseInt(arguments[0]);
        int demandCount = Integer.parseInt(arguments[1]);
        double seconds = Double.parseDouble(arguments[2]);
        DesignProblem problem = DrawnNetwork.draw(Long.parseLong(arguments[3]), sections, demandCount, 1);
        double costMoney = cost(problem, Integer.parseInt(arguments[4]));
        double start = seconds();
        ReducedNetwork reduced = Reduction.of(problem);
        List<RootedDemand> demands = RootedDemand.of(reduced);
        List<Trunk> trunks = Absorption.of(reduced, demands, Integer.getInteger("ends", 3));
        System.out.printf(
                "%d pieces, %d links, %d trunks, %d demands, %d groups, cost %.0f%n",
                problem.pieces().size(),
                reduced.links().size(),
                trunks.size(),
                demands.size(),
                demands.isEmpty() ? 0 : demands.get(demands.size() - 1).group() + 1,
                costMoney);
        var bound = new LagrangeBound(new TrunkNetwork(reduced, demands, trunks), Spread.ON_ONE_THREAD);
        double[] next = {1};
        bound.run(costMoney, Integer.getInteger("steps", 1_000_000), DesignBound.FIRST_STEP, true, () -> {
            double now = seconds() - start;
            if (now > next[0]) {
                next[0] *= 2;
                print(now, bound, costMoney);
            }
            return now > seconds;
        });
        print(seconds() - start, bound, costMoney);
        if (reduced.links().size() <= BoundSettings.DEFAULT.mostLinks()
                && NativeSolver.load().isEmpty()) {
            double before = seconds();
            var settings = new BoundSettings(1000, 0, 3, 200, Long.getLong("nodes", 2000), Long.getLong("program", 0));
            double money = DesignBound.program(reduced, demands, settings, costMoney, Spread.ON_ONE_THREAD)
                    .money()
                    .orElse(0);
            System.out.printf(
                    "integer program, %.0f s: %.0f, gap %.2f %%%n",
                    seconds() - before, money, 100 * (1 - money / costMoney));
        }
    }

    private static void print(double now, LagrangeBound bound, double costMoney) {
        System.out.printf(
                "%.0f s, %d steps: %.0f, gap %.2f %%%n",
                now, bound.iterations(), bound.bestMoney(), 100 * (1 - bound.bestMoney() / costMoney));
    }

    private static double cost(DesignProblem problem, int iterations) {
        String known = System.getProperty("cost");
        if (known != null) {
            return Double.parseDouble(known);
        }
        return new DesignSearch(problem)
                .run(SearchSettings.DEFAULT.withIterations(iterations))
                .design()
                .totalMoney();
    }

    private static double seconds() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / 1e9;
    }
}
