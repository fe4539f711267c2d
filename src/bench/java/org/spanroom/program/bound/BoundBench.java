package org.spanroom.program.bound;

import java.util.List;
import org.spanroom.program.design.DesignProblem;

/** Prints the lower bound of a drawn network as it rises, and how large the network is after each reduction. */
final class BoundBench {
    private BoundBench() {}

    public static void main(String[] arguments) {
        int sections = Integer.parseInt(arguments[0]);
        int demandCount = Integer.parseInt(arguments[1]);
        int seconds = Integer.parseInt(arguments[2]);
        long seed = Long.parseLong(arguments[3]);
        DesignProblem problem = DrawnNetwork.draw(seed, sections, demandCount, 1);
        long start = System.nanoTime();
        ReducedNetwork reduced = Reduction.of(problem);
        List<RootedDemand> demands = RootedDemand.of(reduced);
        List<Trunk> trunks = Absorption.of(reduced, demands, Integer.getInteger("ends", 3));
        System.out.printf(
                "%d pieces, %d links, %d trunks, %d demands, %d groups%n",
                problem.pieces().size(),
                reduced.links().size(),
                trunks.size(),
                demands.size(),
                demands.isEmpty() ? 0 : demands.get(demands.size() - 1).group() + 1);
        var bound = new LagrangeBound(new TrunkNetwork(reduced, demands, trunks), Spread.ON_ONE_THREAD);
        bound.start();
        System.out.printf(
                "%.1f s: start at %.0f%n", (System.nanoTime() - start) / 1e9, bound.evaluate());
        double cost = Double.parseDouble(System.getProperty("cost", "Infinity"));
        long[] next = {1};
        bound.run(cost, Integer.getInteger("steps", 1_000_000), () -> {
            double now = (System.nanoTime() - start) / 1e9;
            if (now > next[0]) {
                next[0] *= 2;
                System.out.printf("%.0f s, %d steps: %.0f%n", now, bound.iterations(), bound.bestMoney());
            }
            return now > seconds;
        });
        System.out.printf("%d steps: %.0f%n", bound.iterations(), bound.bestMoney());
    }
}
