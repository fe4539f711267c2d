package org.spanroom.program;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.program.annual.SetUp;
import org.spanroom.program.annual.Task;
import org.spanroom.program.annual.YearPlan;
import org.spanroom.program.annual.YearProblem;

/** Solves year problems of a few tasks without connections by trying all plans, and keeps what it was asked. */
final class TinySolver implements YearSolver {
    private final List<YearProblem> problems = new ArrayList<>();
    private final List<Effort> efforts = new ArrayList<>();

    List<YearProblem> problems() {
        return Collections.unmodifiableList(problems);
    }

    List<Effort> efforts() {
        return Collections.unmodifiableList(efforts);
    }

    @Override
    public Solved solve(YearProblem problem, Effort effort) {
        problems.add(problem);
        efforts.add(effort);
        Optional<YearPlan> best = Optional.empty();
        int options = problem.years() + 1;
        for (int code = 0; code < Math.pow(options, problem.tasks().size()); code++) {
            Optional<YearPlan> plan = plan(problem, code, options);
            if (plan.isPresent()
                    && (best.isEmpty() || plan.get().value() > best.get().value())) {
                best = plan;
            }
        }
        List<String> shortfalls = best.isEmpty() ? List.of("the musts do not fit") : List.of();
        return new Solved(best, best.map(YearPlan::value).orElse(0.0), shortfalls, true);
    }

    /** Returns a plan with what it uses, set-ups shared within a year; empty where it breaks a limit or lacks a must. */
    private static Optional<YearPlan> plan(YearProblem problem, int code, int options) {
        var years = new ArrayList<Integer>();
        double value = 0;
        int rest = code;
        for (Task task : problem.tasks()) {
            int year = rest % options - 1;
            rest /= options;
            if (year == YearPlan.NEVER ? task.isMust() : !task.isPossibleIn(year)) {
                return Optional.empty();
            }
            years.add(year);
            value += year == YearPlan.NEVER ? task.valueNever() : task.values().get(year);
        }
        var uses = new ArrayList<List<Double>>();
        for (int year = 0; year < problem.years(); year++) {
            uses.add(List.of(used(problem, years, year, 0), used(problem, years, year, 1)));
            for (int resource = 0; resource < 2; resource++) {
                if (uses.get(year).get(resource) > problem.limits().get(year).get(resource) + 1e-9) {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(new YearPlan(years, List.of(), Map.of(), value, uses));
    }

    private static double used(YearProblem problem, List<Integer> years, int year, int resource) {
        double used = 0;
        Map<Integer, Double> greatest = new HashMap<>();
        for (int task = 0; task < years.size(); task++) {
            if (years.get(task) == year) {
                used += problem.tasks().get(task).uses().get(resource);
                for (SetUp setUp : problem.tasks().get(task).setUps()) {
                    double use = setUp.uses().get(resource);
                    used -= Math.min(use, greatest.getOrDefault(setUp.place(), 0.0));
                    greatest.merge(setUp.place(), use, Math::max);
                }
            }
        }
        return used;
    }
}
