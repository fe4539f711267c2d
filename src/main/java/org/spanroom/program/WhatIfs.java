package org.spanroom.program;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.CurvePoint;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.PriceItem;
import org.spanroom.model.program.YearBudget;
import org.spanroom.program.annual.Connections;
import org.spanroom.program.annual.Task;
import org.spanroom.program.annual.Wish;
import org.spanroom.program.annual.YearPlan;
import org.spanroom.program.annual.YearProblem;

/** What other budgets, conditions and draws would make of a program: year plans only, without their calendars. */
public final class WhatIfs {
    /** Budgets of the curve over those of the program. */
    private static final List<Double> RATIOS = List.of(0.25, 0.5, 0.75, 1.0, 1.25, 1.5, 2.0);

    private final YearSolver solver;

    public WhatIfs(YearSolver solver) {
        this.solver = solver;
    }

    /**
     * What a year plan amounts to.
     *
     * @param value what it is worth
     * @param positions positions that its tasks add
     * @param connections how many connections it serves
     * @param money what it spends
     */
    public record Amounts(double value, int positions, int connections, double money) {
        /**
         * Returns by how much this exceeds another, as the price of a condition. The plan with the condition holds without it too, so that a price
         * is never below 0: where the search found nothing better, it is 0.
         */
        public PriceItem over(Amounts other, String kind, String name) {
            if (value <= other.value) {
                return new PriceItem(kind, name, 0, 0, 0, 0);
            }
            return new PriceItem(
                    kind,
                    name,
                    value - other.value,
                    positions - other.positions,
                    connections - other.connections,
                    money - other.money);
        }
    }

    /** Returns what a plan of some inputs amounts to, found quickly; empty where none holds the musts. */
    public Optional<Amounts> amounts(ProgramInputs inputs) {
        return solver.solve(new YearModel(inputs).problem(), YearSolver.Effort.QUICK)
                .plan()
                .map(plan -> amounts(inputs, plan));
    }

    private static Amounts amounts(ProgramInputs inputs, YearPlan plan) {
        int positions = 0;
        for (int task = 0; task < inputs.eligibleSpans().size(); task++) {
            if (plan.yearOf().get(task) != YearPlan.NEVER) {
                positions += inputs.eligibleSpans().get(task).facts().positionsGained();
            }
        }
        double money = plan.uses().stream()
                .mapToDouble(year -> year.get(YearProblem.MONEY))
                .sum();
        int served = (int) plan.served().stream().filter(Optional::isPresent).count();
        return new Amounts(plan.value(), positions, served, money);
    }

    /** Returns what budgets from a quarter to twice those of the program buy; nothing where no year has a budget. */
    public List<CurvePoint> curve(ProgramInputs inputs) {
        double whole = inputs.budgets().stream().mapToDouble(YearBudget::money).sum();
        var points = new ArrayList<CurvePoint>();
        if (!Double.isFinite(whole)) {
            return points;
        }
        CurvePoint before = new CurvePoint(0, 0, 0, 0, 0, 0, OptionalDouble.empty(), OptionalDouble.empty());
        for (double ratio : RATIOS) {
            YearProblem problem =
                    new YearModel(inputs.withBudgets(YearModel.scaled(inputs.budgets(), ratio))).problem();
            YearSolver.Solved solved = solver.solve(problem, YearSolver.Effort.REPAIR);
            if (solved.plan().isPresent()) {
                Amounts amounts = amounts(inputs, solved.plan().get());
                before = point(ratio, whole * ratio, amounts, solved.boundValue(), before);
                points.add(before);
            }
        }
        return points;
    }

    private static CurvePoint point(double ratio, double money, Amounts amounts, double bound, CurvePoint before) {
        int added = amounts.positions() - before.positions();
        return new CurvePoint(
                ratio,
                money,
                amounts.money(),
                amounts.positions(),
                amounts.connections(),
                amounts.value(),
                Double.isFinite(bound) ? OptionalDouble.of(bound) : OptionalDouble.empty(),
                added > 0
                        ? OptionalDouble.of((amounts.money() - before.spentMoney()) / added)
                        : OptionalDouble.empty());
    }

    /**
     * Returns in what share of the draws each task is chosen, where the year problem is solved with what works in the draw.
     *
     * @param draws how many of the run's draws are taken, the first ones
     */
    public Map<Integer, Double> chosenRatios(ProgramInputs inputs, YearProblem problem, int draws) {
        var counts = new HashMap<Integer, Integer>();
        int done = 0;
        for (int draw = 0; draw < Math.min(draws, inputs.network().samples()); draw++) {
            Optional<YearPlan> plan = solver.solve(inDraw(inputs, problem, draw), YearSolver.Effort.QUICK)
                    .plan();
            done++;
            for (int task = 0; plan.isPresent() && task < problem.tasks().size(); task++) {
                if (plan.get().yearOf().get(task) != YearPlan.NEVER) {
                    counts.merge(task, 1, Integer::sum);
                }
            }
        }
        var ratios = new HashMap<Integer, Double>();
        for (int task = 0; done > 0 && task < problem.tasks().size(); task++) {
            ratios.put(task, counts.getOrDefault(task, 0) / (double) done);
        }
        return ratios;
    }

    /** Returns the problem without the tasks that fail in a draw. */
    private static YearProblem inDraw(ProgramInputs inputs, YearProblem problem, int draw) {
        var tasks = new ArrayList<Task>();
        for (int number = 0; number < problem.tasks().size(); number++) {
            EligibleSpan span = inputs.eligibleSpans().get(number);
            Task task = problem.tasks().get(number);
            boolean works = (span.recovery().feasibleDraws().orElse(-1L) >>> draw & 1) == 1;
            tasks.add(works ? task : impossible(task));
        }
        return problem.withTasks(tasks);
    }

    private static Task impossible(Task task) {
        return new Task(task.values(), task.valueNever(), task.uses(), 0, -1, false, task.setUps());
    }

    /**
     * Returns, by name, what it would take to serve each connection of a plan that is not served by the day it is needed.
     *
     * @param base what a quick plan of the same inputs amounts to
     */
    public Map<String, String> takes(ProgramInputs inputs, YearProblem problem, YearPlan plan, Amounts base) {
        var takes = new HashMap<String, String>();
        for (int demand = 0; demand < plan.served().size(); demand++) {
            if (plan.served().get(demand).isEmpty()) {
                Connection connection = inputs.connectPlan().usable().get(demand);
                takes.put(connection.name(), takes(inputs, problem, demand, base));
            }
        }
        return takes;
    }

    private String takes(ProgramInputs inputs, YearProblem problem, int demand, Amounts base) {
        YearSolver.Solved within = solver.solve(forced(problem, demand, false), YearSolver.Effort.QUICK);
        if (within.plan().isPresent()
                && within.plan().get().served().get(demand).isPresent()) {
            double lost = base.value() - within.plan().get().value();
            return String.format(
                    Locale.ROOT, "to serve it, the rest of the program would be worth %,.0f less", Math.max(0, lost));
        }
        YearSolver.Solved without = solver.solve(forced(problem, demand, true), YearSolver.Effort.QUICK);
        Optional<YearPlan> alone =
                without.plan().filter(found -> found.served().get(demand).isPresent());
        return alone.map(found -> String.format(
                        Locale.ROOT,
                        "it alone would cost %,.0f by year %s, more than the budgets give",
                        amounts(inputs, found).money(),
                        found.served().get(demand).orElseThrow().year() + 1))
                .orElse("no work can serve it by then, whatever it costs");
    }

    /**
     * Returns the problem with a connection as a must.
     *
     * @param isAlone whether it is the only thing worth anything, and money does not limit it
     */
    private static YearProblem forced(YearProblem problem, int demand, boolean isAlone) {
        Connections all = problem.connections().orElseThrow();
        var wishes = new ArrayList<Wish>();
        for (int number = 0; number < all.wishes().size(); number++) {
            Wish wish = all.wishes().get(number);
            if (number == demand) {
                wishes.add(new Wish(wish.values(), true, wish.lastYear()));
            } else {
                wishes.add(
                        isAlone
                                ? new Wish(
                                        wish.values().stream().map(value -> 0.0).toList(), false, -1)
                                : wish);
            }
        }
        var connections =
                new Connections(all.network(), all.taskOfBin(), all.firstBuildYear(), all.buildUses(), wishes);
        return new YearProblem(
                isAlone ? unlimited(problem) : problem.limits(),
                isAlone ? worthless(problem) : problem.tasks(),
                problem.places(),
                Optional.of(connections));
    }

    private static List<List<Double>> unlimited(YearProblem problem) {
        return problem.limits().stream()
                .map(year -> List.of(Double.POSITIVE_INFINITY, year.get(YearProblem.HOURS)))
                .toList();
    }

    private static List<Task> worthless(YearProblem problem) {
        return problem.tasks().stream()
                .map(task -> new Task(
                        task.values().stream().map(value -> 0.0).toList(),
                        0,
                        task.uses(),
                        task.firstYear(),
                        task.lastYear(),
                        false,
                        task.setUps()))
                .toList();
    }
}
