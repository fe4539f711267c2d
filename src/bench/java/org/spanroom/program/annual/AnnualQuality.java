package org.spanroom.program.annual;

import java.util.List;
import java.util.Locale;
import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.spanroom.pipeline.NativeSolver;
import org.spanroom.program.design.Spread;

/** How close the program of years comes to its bound, and how fast, on invented cities of three sizes, with the library and without. */
public final class AnnualQuality {
    private static final int[] SECTIONS = {300, 1_000, 3_000};
    private static final int YEARS = 5;

    private static final Spread ON_ALL_PROCESSORS = new Spread() {
        @Override
        public <W> void over(int count, Supplier<W> worker, ObjIntConsumer<W> work) {
            IntStream.range(0, count).parallel().forEach(number -> work.accept(worker.get(), number));
        }
    };

    private AnnualQuality() {}

    /** Prints the table; arguments: sizes (1 to 3, or one size alone if it is larger), cities of each size, 1 to do it without the library too. */
    public static void main(String[] args) {
        boolean hasLibrary = NativeSolver.load().isEmpty();
        int sizes = Integer.parseInt(args[0]);
        int[] chosen = sizes <= SECTIONS.length ? IntStream.of(SECTIONS).limit(sizes).toArray() : new int[] {sizes};
        System.out.println("sections  tasks  seed  library         value         bound      gap     time s  iterations");
        for (int sections : chosen) {
            for (int seed = 1; seed <= Integer.parseInt(args[1]); seed++) {
                if (hasLibrary) {
                    System.out.println(row(sections, seed, true));
                }
                if (!hasLibrary || args[2].equals("1")) {
                    System.out.println(row(sections, seed, false));
                }
            }
        }
    }

    private static String row(int sections, long seed, boolean hasLibrary) {
        YearProblem problem = InventedTasks.drawn(sections, YEARS, seed);
        int tasks = problem.tasks().size();
        long start = System.nanoTime();
        AnnualResult result = AnnualSolver.solve(
                problem, AnnualSettings.forTasks(tasks), hasLibrary, ON_ALL_PROCESSORS, () -> false);
        double timeS = (System.nanoTime() - start) / 1e9;
        YearPlan plan = result.plan().orElseThrow(() -> new IllegalStateException(result.toString()));
        List<String> problems = YearPlanChecker.problems(problem, plan);
        if (!problems.isEmpty()) {
            throw new IllegalStateException(problems.get(0));
        }
        return String.format(
                Locale.ROOT,
                "%8d %6d %5d %8s %13.0f %13.0f %7.3f%% %9.1f %11d",
                sections,
                tasks,
                seed,
                hasLibrary ? "yes" : "no",
                plan.value(),
                result.bound(),
                100 * result.gapRatio(),
                timeS,
                result.iterations());
    }
}
