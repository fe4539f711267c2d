package org.spanroom.program.design;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Finds a good design: several starts of ruin and recreate under simulated annealing, on the contracted network, with exact
 * costs. The same problem and settings give the same design, whatever the threads. There is no promise that it is the best.
 */
public final class DesignSearch {
    private static final long SEED_STEP = 0x9E3779B97F4A7C15L;

    private final DesignTask task;
    private final DesignProblem problem;

    /**
     * What was found.
     *
     * @param unserved for each demand that the design does not serve, why
     * @param iterations how many were done, over all starts
     * @param isWhole whether all iterations were done; if not, another run may find another design
     */
    public record Result(Design design, Map<Integer, Unserved> unserved, long iterations, boolean isWhole) {
        public Result {
            unserved = Map.copyOf(unserved);
        }
    }

    private record Found(
            List<int @Nullable []> ways, int missingMusts, double money, int iterations, boolean isWhole) {}

    /** Prepares the search of a problem. */
    public DesignSearch(DesignProblem problem) {
        this.problem = problem;
        task = new DesignTask(problem);
    }

    /** Searches through all iterations, on the calling thread. */
    public Result run(SearchSettings settings) {
        return run(settings, Spread.ON_ONE_THREAD, () -> false);
    }

    /**
     * Searches.
     *
     * @param spread does the starts, at the same time if it likes
     * @param stop asked before each iteration, by all threads of {@code spread}; once it is true the search ends with the best so
     *     far, improved demand by demand
     */
    public Result run(SearchSettings settings, Spread spread, BooleanSupplier stop) {
        List<Found> all = found(settings, spread, stop);
        Found best = all.stream()
                .min(Comparator.comparingInt(Found::missingMusts).thenComparingDouble(Found::money))
                .orElseThrow();
        Design design = design(best.ways());
        return new Result(
                design,
                UnservedReasons.of(task, best.ways()),
                all.stream().mapToLong(Found::iterations).sum(),
                all.stream().allMatch(Found::isWhole));
    }

    private List<Found> found(SearchSettings settings, Spread spread, BooleanSupplier stop) {
        var all = new Found[settings.starts()];
        spread.over(all.length, () -> task, (ofStart, start) -> all[start] = found(settings, start, stop));
        return List.of(all);
    }

    private Found found(SearchSettings settings, int start, BooleanSupplier stop) {
        var annealing = new Annealing(task, settings.seed() + start * SEED_STEP);
        boolean isWhole = annealing.run(settings.iterations(), stop);
        WorkingDesign best = annealing.design();
        var ways = new ArrayList<int @Nullable []>();
        for (int demand = 0; demand < task.demands(); demand++) {
            ways.add(best.wayOf(demand));
        }
        return new Found(ways, best.missingMusts(), best.totalMoney(), annealing.done(), isWhole);
    }

    private Design design(List<int @Nullable []> linkWays) {
        var ways = new ArrayList<List<Integer>>();
        var passing = new TreeMap<Integer, Map<Integer, Integer>>();
        double unservedMoney = 0;
        for (int number = 0; number < linkWays.size(); number++) {
            Demand demand = problem.demands().get(number);
            int[] linkWay = linkWays.get(number);
            List<Integer> way = linkWay == null ? List.of() : task.network().piecesOf(linkWay, task.from(number));
            ways.add(way);
            unservedMoney += linkWay == null ? demand.prize() : 0;
            for (int piece : way) {
                passing.computeIfAbsent(piece, none -> new TreeMap<>()).put(number, demand.cables());
            }
        }
        var uses = new TreeMap<Integer, Design.Use>();
        passing.forEach((piece, cablesOf) ->
                uses.put(piece, new PieceCost(problem.pieces().get(piece)).use(cablesOf)));
        double workMoney = uses.values().stream().mapToDouble(Design.Use::money).sum();
        return new Design(ways, uses, workMoney, unservedMoney);
    }
}
