package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.spanroom.program.design.Spread;

/** Chooses the years of all tasks again, with the connections of a plan as they are: a task that they need has to be done before they are served. */
final class TaskFilling {
    /** Iterations over tasks are faster than those over connections. */
    private static final int ITERATIONS_RATIO = 5;

    /** Prices of a quick plan are found with fewer steps. */
    private static final int QUICK_DIVISOR = 8;

    private final YearProblem problem;
    private final Connections connections;
    private final YearPlan plan;
    private final int[] neededBy;

    TaskFilling(YearProblem problem, YearPlan plan) {
        this.problem = problem;
        this.plan = plan;
        connections = problem.connections().orElseThrow();
        neededBy = new int[problem.tasks().size()];
        Arrays.fill(neededBy, problem.years());
        for (int piece = 0; piece < connections.taskOfBin().size(); piece++) {
            for (int bin = 0; bin < connections.taskOfBin().get(piece).size(); bin++) {
                int task = connections.taskOfBin().get(piece).get(bin);
                if (task >= 0) {
                    neededBy[task] = Math.min(neededBy[task], neededBy(piece, bin));
                }
            }
        }
    }

    /** Returns the first year at whose end more cables lie in a bin than it takes as it is; the number of years where there is none. */
    private int neededBy(int piece, int bin) {
        int[] cables = new int[problem.years()];
        for (int demand = 0; demand < plan.served().size(); demand++) {
            if (plan.served().get(demand).isPresent()) {
                YearPlan.Served served = plan.served().get(demand).get();
                int step = served.way().indexOf(piece);
                if (step >= 0 && served.bins().get(step) == bin) {
                    cables[served.year()] +=
                            connections.network().demands().get(demand).cables();
                }
            }
        }
        int now = connections.network().pieces().get(piece).bins().get(bin).now();
        int sum = 0;
        for (int year = 0; year < cables.length; year++) {
            sum += cables[year];
            if (sum > now) {
                return year;
            }
        }
        return cables.length;
    }

    /** Returns the plan with the tasks' years of most value that are found, if that is more than its own. */
    YearPlan run(AnnualSettings settings, boolean hasLibrary, Spread spread, BooleanSupplier stop) {
        List<Task> tasks = new ArrayList<>();
        for (int task = 0; task < neededBy.length; task++) {
            Task each = problem.tasks().get(task);
            boolean isNeeded = neededBy[task] < problem.years();
            tasks.add(new Task(
                    each.values(),
                    each.valueNever(),
                    each.uses(),
                    each.firstYear(),
                    Math.min(each.lastYear(), isNeeded ? neededBy[task] : each.lastYear()),
                    each.isMust() || isNeeded,
                    each.setUps()));
        }
        var left = new YearProblem(limitsLeft(), tasks, problem.places(), Optional.empty());
        AnnualSettings usual = AnnualSettings.forTasks(tasks.size());
        var ofTasks = new AnnualSettings(
                settings.seed(),
                settings.isBounded() ? usual.priceSteps() : usual.priceSteps() / QUICK_DIVISOR,
                Math.min(usual.iterations(), ITERATIONS_RATIO * settings.iterations()),
                settings.starts(),
                settings.isBounded(),
                Math.min(usual.programTime(), settings.programTime()));
        AnnualResult result = AnnualSolver.solve(left, ofTasks, hasLibrary, spread, stop);
        return result.plan()
                .map(this::with)
                .filter(other -> other.value() > plan.value())
                .orElse(plan);
    }

    private List<List<Double>> limitsLeft() {
        return IntStream.range(0, problem.years())
                .mapToObj(year -> IntStream.range(0, problem.resources())
                        .mapToObj(resource ->
                                Math.max(0, problem.limits().get(year).get(resource) - built(year, resource)))
                        .toList())
                .toList();
    }

    private double built(int year, int resource) {
        double used = 0;
        for (Map.Entry<Integer, List<Integer>> entry : plan.built().entrySet()) {
            for (int duct = 0; duct < entry.getValue().size(); duct++) {
                used += entry.getValue().get(duct) == year
                        ? connections.buildUse(entry.getKey(), resource, duct == 0)
                        : 0;
            }
        }
        return used;
    }

    private YearPlan with(YearPlan tasks) {
        double value = tasks.value();
        for (int demand = 0; demand < plan.served().size(); demand++) {
            if (plan.served().get(demand).isPresent()) {
                int year = plan.served().get(demand).get().year();
                value += connections.wishes().get(demand).values().get(year);
            }
        }
        List<List<Double>> uses = IntStream.range(0, problem.years())
                .mapToObj(year -> IntStream.range(0, problem.resources())
                        .mapToObj(resource -> tasks.uses().get(year).get(resource) + built(year, resource))
                        .toList())
                .toList();
        return new YearPlan(tasks.yearOf(), plan.served(), plan.built(), value, uses);
    }
}
