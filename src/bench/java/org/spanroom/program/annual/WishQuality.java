package org.spanroom.program.annual;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.spanroom.pipeline.NativeSolver;
import org.spanroom.program.design.ManyThreads;

/** How close plans of invented cities with connections come to their bounds, and how fast. */
public final class WishQuality {
    private static final int YEARS = 5;
    private static final int LONGER = 10;

    private WishQuality() {}

    /** Prints a table; arguments: spans, connections, cities, iterations (0 for the default), 1 for runs of ten times the iterations too. */
    public static void main(String[] args) {
        boolean hasLibrary = NativeSolver.load().isEmpty();
        System.out.println("spans/conn.  seed   tasks   served        value        bound     gap    time s   10 x value   below");
        for (int seed = 1; seed <= Integer.parseInt(args[2]); seed++) {
            YearProblem problem =
                    AnnualCity.drawn(Integer.parseInt(args[0]), Integer.parseInt(args[1]), YEARS, seed);
            var defaults = AnnualSettings.of(problem);
            int iterations = Integer.parseInt(args[3]);
            AnnualSettings settings = iterations == 0 ? defaults : defaults.withIterations(iterations);
            long start = System.nanoTime();
            AnnualResult result = solve(problem, settings, hasLibrary);
            double timeS = (System.nanoTime() - start) / 1e9;
            YearPlan plan = result.plan().orElseThrow();
            System.out.printf(
                    Locale.ROOT,
                    "%6s/%-4s %5d %8d %5d/%-4s %11.0f %12.0f %6.2f%% %9.1f%n",
                    args[0],
                    args[1],
                    seed,
                    problem.tasks().size(),
                    plan.served().stream().filter(Optional::isPresent).count(),
                    args[1],
                    plan.value(),
                    result.bound(),
                    100 * result.gapRatio(),
                    timeS);
            if (args[4].equals("1")) {
                double longer = solve(problem, settings.withIterations(LONGER * settings.iterations()), hasLibrary)
                        .plan()
                        .orElseThrow()
                        .value();
                System.out.printf(Locale.ROOT, "%83.0f %6.2f%%%n", longer, 100 * (1 - plan.value() / longer));
            }
        }
    }

    private static AnnualResult solve(YearProblem problem, AnnualSettings settings, boolean hasLibrary) {
        AnnualResult result = AnnualSolver.solve(problem, settings, hasLibrary, ManyThreads.SPREAD, () -> false);
        List<String> problems = YearPlanChecker.problems(problem, result.plan().orElseThrow());
        if (problems.size() != result.shortages().size()) {
            throw new IllegalStateException(problems.toString());
        }
        return result;
    }
}
