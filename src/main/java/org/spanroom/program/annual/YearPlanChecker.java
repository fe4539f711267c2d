package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Verifies a plan from scratch: years are possible, musts are done, limits hold, uses and value are those of what is done, and connections are
 * served by what is there. Shares nothing with the search.
 */
public final class YearPlanChecker {
    private static final double ROUNDING = 1e-9;

    private final YearProblem problem;
    private final YearPlan plan;
    private final List<String> problems = new ArrayList<>();

    private YearPlanChecker(YearProblem problem, YearPlan plan) {
        this.problem = problem;
        this.plan = plan;
    }

    /** Returns what is wrong, a line each; empty where nothing is. */
    public static List<String> problems(YearProblem problem, YearPlan plan) {
        var checker = new YearPlanChecker(problem, plan);
        checker.check();
        return checker.problems;
    }

    private void check() {
        if (plan.yearOf().size() != problem.tasks().size()) {
            problems.add(plan.yearOf().size() + " years of " + problem.tasks().size() + " tasks");
            return;
        }
        for (int task = 0; task < problem.tasks().size(); task++) {
            checkYear(task, problem.tasks().get(task), plan.yearOf().get(task));
        }
        if (problem.connections().isPresent()) {
            problems.addAll(new ServedChecker(problem, problem.connections().get(), plan).problems());
        } else if (!plan.served().isEmpty() || !plan.built().isEmpty()) {
            problems.add("serves or builds without connections");
        }
        if (problems.isEmpty()) {
            checkUses();
            checkValue();
        }
    }

    private void checkYear(int number, Task task, int year) {
        if (year == YearPlan.NEVER) {
            if (task.isMust()) {
                problems.add("task " + number + " is a must and not done");
            }
        } else if (year < 0 || year >= problem.years() || !task.isPossibleIn(year)) {
            problems.add("task " + number + " is not possible in year " + year);
        }
    }

    private void checkUses() {
        if (plan.uses().size() != problem.years()) {
            problems.add("uses of " + plan.uses().size() + " years");
            return;
        }
        for (int year = 0; year < problem.years(); year++) {
            if (plan.uses().get(year).size() != problem.resources()) {
                problems.add("uses of " + plan.uses().get(year).size() + " resources");
                return;
            }
            for (int resource = 0; resource < problem.resources(); resource++) {
                String where = "year " + year + ", resource " + resource + ": ";
                double used = used(year, resource);
                double limit = problem.limits().get(year).get(resource);
                if (used > limit * (1 + 2 * ROUNDING)) {
                    problems.add(where + used + " used of " + limit);
                }
                compare(where + "use", plan.uses().get(year).get(resource), used);
            }
        }
    }

    private double used(int year, int resource) {
        double used = 0;
        Map<Integer, Double> greatest = new TreeMap<>();
        for (int task = 0; task < problem.tasks().size(); task++) {
            if (plan.yearOf().get(task) == year) {
                Task each = problem.tasks().get(task);
                used += each.uses().get(resource);
                for (SetUp setUp : each.setUps()) {
                    double use = setUp.uses().get(resource);
                    double before = greatest.getOrDefault(setUp.place(), 0.0);
                    used -= Math.min(before, use);
                    greatest.put(setUp.place(), Math.max(before, use));
                }
            }
        }
        return used + built(year, resource);
    }

    private double built(int year, int resource) {
        double used = 0;
        for (Map.Entry<Integer, List<Integer>> entry : plan.built().entrySet()) {
            for (int duct = 0; duct < entry.getValue().size(); duct++) {
                if (entry.getValue().get(duct) == year) {
                    used += problem.connections().orElseThrow().buildUse(entry.getKey(), resource, duct == 0);
                }
            }
        }
        return used;
    }

    private void checkValue() {
        double value = 0;
        for (int task = 0; task < problem.tasks().size(); task++) {
            Task each = problem.tasks().get(task);
            int year = plan.yearOf().get(task);
            value += year == YearPlan.NEVER ? each.valueNever() : each.values().get(year);
        }
        for (int demand = 0; demand < plan.served().size(); demand++) {
            if (plan.served().get(demand).isPresent()) {
                Wish wish = problem.connections().orElseThrow().wishes().get(demand);
                value += wish.values().get(plan.served().get(demand).get().year());
            }
        }
        compare("value", plan.value(), value);
    }

    private void compare(String what, double stated, double found) {
        if (!(Math.abs(stated - found) <= 10 * ROUNDING * Math.max(1, Math.abs(found)))) {
            problems.add(what + " " + stated + ", recalculated " + found);
        }
    }
}
