package org.spanroom.program.design;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import org.spanroom.pipeline.NativeSolver;
import org.spanroom.program.bound.BoundSettings;
import org.spanroom.program.bound.DesignBound;

/** How good and how fast the search for designs is, on invented cities of three sizes, beside runs ten times as long. */
public final class ConnectQuality {
    private static final double MIB = 1 << 20;
    private static final int LONGER = 10;
    private static final int[][] SIZES = {{300, 20}, {3_000, 100}, {30_000, 300}};

    private final int iterations;
    private final BiFunction<DesignProblem, Design, OptionalDouble> bound;

    private ConnectQuality(int iterations, BiFunction<DesignProblem, Design, OptionalDouble> bound) {
        this.iterations = iterations;
        this.bound = bound;
    }

    /** Prints the table; arguments: sizes (1 to 3), cities of each size, iterations (0 for the default), 1 for the longer runs too. */
    public static void main(String[] args) {
        boolean hasLibrary = NativeSolver.load().isEmpty();
        var quality =
                new ConnectQuality(Integer.parseInt(args[2]), (problem, design) -> bound(problem, design, hasLibrary));
        System.out.println(
                "spans/conn. seed    pieces  links   served  least cost     time s processor s  peak MiB   bound       gap   "
                        + "10 x cost      time s   above");
        for (int size = 0; size < Integer.parseInt(args[0]); size++) {
            for (int seed = 1; seed <= Integer.parseInt(args[1]); seed++) {
                System.out.println(quality.row(SIZES[size][0], SIZES[size][1], seed, args[3].equals("1")));
            }
        }
    }

    /** Of the problem without the musts that the design leaves out, as its cost is. */
    private static OptionalDouble bound(DesignProblem problem, Design design, boolean hasLibrary) {
        var demands = new ArrayList<Demand>();
        for (int demand = 0; demand < design.ways().size(); demand++) {
            Demand each = problem.demands().get(demand);
            if (!design.ways().get(demand).isEmpty() || !each.isMust()) {
                demands.add(each);
            }
        }
        var served = new DesignProblem(problem.places(), problem.pieces(), demands);
        return OptionalDouble.of(DesignBound.of(
                        served,
                        BoundSettings.of(served),
                        cost(problem, design),
                        hasLibrary,
                        ManyThreads.SPREAD,
                        () -> false)
                .money());
    }

    private String row(int spans, int connections, long seed, boolean isCompared) {
        DesignProblem problem = InventedCity.drawn(spans, connections, seed);
        var defaults = SearchSettings.forDemands(connections);
        SearchSettings settings = iterations == 0 ? defaults : defaults.withIterations(iterations);
        peakMib();
        long start = System.nanoTime();
        double processorStartS = processorS();
        var result = new DesignSearch(problem).run(settings, ManyThreads.SPREAD, () -> false);
        double timeS = (System.nanoTime() - start) / 1e9;
        double processorTimeS = processorS() - processorStartS;
        double peakMib = peakMib();
        double cost = cost(problem, result.design());
        OptionalDouble least = bound.apply(problem, result.design());
        return String.format(
                Locale.ROOT,
                "%6d/%-4d %4d %9d %6d %5d/%-4d %12.0f %10.1f %11.1f %9.0f %11s %7s %s",
                spans,
                connections,
                seed,
                problem.pieces().size(),
                new DesignTask(problem).network().links(),
                connections - result.unserved().size(),
                connections,
                cost,
                timeS,
                processorTimeS,
                peakMib,
                least.isPresent() ? String.format(Locale.ROOT, "%.0f", least.getAsDouble()) : "-",
                least.isPresent() ? percent(1 - least.getAsDouble() / cost) : "-",
                isCompared ? longer(problem, settings, cost) : "");
    }

    private String longer(DesignProblem problem, SearchSettings settings, double cost) {
        long start = System.nanoTime();
        var result = new DesignSearch(problem)
                .run(settings.withIterations(LONGER * settings.iterations()), ManyThreads.SPREAD, () -> false);
        double longerCost = cost(problem, result.design());
        return String.format(
                Locale.ROOT,
                "%12.0f %10.1f %7s",
                longerCost,
                (System.nanoTime() - start) / 1e9,
                percent(cost / longerCost - 1));
    }

    private static String percent(double ratio) {
        return String.format(Locale.ROOT, "%.2f %%", 100 * ratio);
    }

    /** Work and prizes missed; musts that cannot be served are left out of it. */
    private static double cost(DesignProblem problem, Design design) {
        List<String> problems = DesignChecker.problems(problem, design);
        if (!problems.isEmpty()) {
            throw new IllegalStateException(problems.get(0));
        }
        double missed = 0;
        for (int demand = 0; demand < design.ways().size(); demand++) {
            Demand each = problem.demands().get(demand);
            missed += design.ways().get(demand).isEmpty() && !each.isMust() ? each.prize() : 0;
        }
        return design.workMoney() + missed;
    }

    /** Of all threads: other work on the machine does not count. */
    private static double processorS() {
        var system = (com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
        return system.getProcessCpuTime() / 1e9;
    }

    /** Returns the peak of the heap since the last call. */
    private static double peakMib() {
        double peak = 0;
        for (MemoryPoolMXBean pool : ManagementFactory.getMemoryPoolMXBeans()) {
            if (pool.getType() == MemoryType.HEAP) {
                peak += pool.getPeakUsage().getUsed();
                pool.resetPeakUsage();
            }
        }
        return peak / MIB;
    }
}
