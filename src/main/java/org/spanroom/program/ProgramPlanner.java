package org.spanroom.program;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.model.program.WorkOrder;
import org.spanroom.program.annual.Task;
import org.spanroom.program.annual.YearPlan;
import org.spanroom.program.annual.YearProblem;
import org.spanroom.program.calendar.CrewScheduler;
import org.spanroom.program.calendar.SchedulerSettings;

/**
 * Makes the plan of the years and its calendar agree.
 *
 * <p>The year plan shares the set-up of a vault among all its work of a year, the calendar only between work that follows one another in a shift. Where the
 * calendar's money exceeds a budget, or work finds no place in it, the year problem is solved again with limits that are lower by what was missing. The
 * best plan whose calendar keeps all limits is the result; the bound is that of the first problem, so it holds for the year model.
 */
public final class ProgramPlanner {
    private static final int MOST_ROUNDS = 4;
    private static final int MOST_TRIMS = 20;
    private static final double TOLERANCE_RATIO = 1e-9;

    private final ProgramInputs inputs;
    private final YearProblem problem;
    private final YearSolver solver;

    public ProgramPlanner(ProgramInputs inputs, YearProblem problem, YearSolver solver) {
        this.inputs = inputs;
        this.problem = problem;
        this.solver = solver;
    }

    /**
     * A plan and its calendar, which agree.
     *
     * @param plan what is done in which year; its value and uses are those of the calendar
     * @param orders the work orders, by the numbers of their tasks
     * @param calendar all of them
     * @param yearValue the value of the year plan before the calendar
     * @param boundValue what no year plan can be worth more than
     * @param rounds how often the year problem was solved again
     * @param shortfalls which musts are not in it, a line each
     * @param isWhole whether no limit of time ended the work
     */
    public record Planned(
            YearPlan plan,
            SortedMap<Integer, WorkOrder> orders,
            WorkCalendar calendar,
            double yearValue,
            double boundValue,
            int rounds,
            List<String> shortfalls,
            boolean isWhole) {}

    /** A plan with its calendar, which may not agree yet. */
    private record Attempt(
            YearPlan plan, SortedMap<Integer, WorkOrder> orders, WorkCalendar calendar, CalendarUses uses) {}

    /** Returns the program, or why there is none. */
    public Optional<Planned> plan(List<String> whyNot) {
        YearSolver.Solved first = solver.solve(problem, YearSolver.Effort.FULL);
        whyNot.addAll(first.shortfalls());
        if (first.plan().isEmpty()) {
            return Optional.empty();
        }
        YearSolver.Solved now = first;
        YearProblem tightened = problem;
        Optional<Attempt> best = Optional.empty();
        int round = 0;
        while (now.plan().isPresent()) {
            Attempt attempt = attempt(now.plan().get());
            Attempt fitting = trimmed(attempt);
            if (best.isEmpty() || value(fitting.plan()) > value(best.get().plan())) {
                best = Optional.of(fitting);
            }
            if (fitting == attempt || round == MOST_ROUNDS) {
                break;
            }
            round++;
            tightened = tightened(tightened, attempt);
            now = solver.solve(tightened, YearSolver.Effort.REPAIR);
        }
        Attempt found = best.orElseThrow();
        return Optional.of(new Planned(
                accounted(found),
                found.orders(),
                found.calendar(),
                value(first.plan().get()),
                first.boundValue(),
                round,
                first.shortfalls(),
                first.isWhole()));
    }

    private Attempt attempt(YearPlan plan) {
        SortedMap<Integer, WorkOrder> orders = ProgramOrders.of(inputs, problem.connections(), plan);
        List<WorkOrder> list = List.copyOf(orders.values());
        WorkCalendar calendar =
                CrewScheduler.schedule(inputs.rules(), list, SchedulerSettings.forOrders(list.size()));
        return new Attempt(
                plan, orders, calendar, CalendarUses.of(inputs.candidates(), problem, plan, orders, calendar));
    }

    /** Returns the attempt itself if it keeps all limits, or else one with less work that does. */
    private Attempt trimmed(Attempt attempt) {
        Attempt fitting = attempt;
        for (int trim = 0; trim < MOST_TRIMS; trim++) {
            Set<Integer> dropped = unplaced(fitting);
            if (dropped.isEmpty()) {
                dropped = aboveLimits(fitting);
            }
            if (dropped.isEmpty()) {
                return fitting;
            }
            fitting = attempt(ServedWorks.without(problem.connections(), fitting.plan(), dropped));
        }
        return fitting;
    }

    private static Set<Integer> unplaced(Attempt attempt) {
        Set<String> spans = new HashSet<>();
        attempt.calendar().unplaced().forEach(row -> spans.add(row.order().spanId()));
        Set<Integer> tasks = new HashSet<>();
        attempt.orders().forEach((task, order) -> {
            if (spans.contains(order.spanId())) {
                tasks.add(task);
            }
        });
        return tasks;
    }

    /** Returns the work to be dropped of years that cost more than they have: that of the least priority for its money first. */
    private Set<Integer> aboveLimits(Attempt attempt) {
        Set<Integer> dropped = new HashSet<>();
        for (int year = 0; year < problem.years(); year++) {
            double excess = attempt.uses().money(year) - problem.limits().get(year).get(YearProblem.MONEY);
            if (excess > TOLERANCE_RATIO * Math.abs(attempt.uses().money(year))) {
                for (int task : leastFirst(attempt, year)) {
                    if (excess <= 0) {
                        break;
                    }
                    dropped.add(task);
                    excess -= inputs.candidates().get(task).budgetMoney();
                }
            }
        }
        return dropped;
    }

    private List<Integer> leastFirst(Attempt attempt, int year) {
        var tasks = new ArrayList<Integer>();
        attempt.orders().forEach((task, order) -> {
            if (order.year() == year && !inputs.candidates().get(task).isMust()) {
                tasks.add(task);
            }
        });
        tasks.sort(Comparator.comparingDouble(task -> attempt.orders().get(task).priorityMoney()
                / inputs.candidates().get(task).budgetMoney()));
        return tasks;
    }

    /** Returns the problem with the limits of its years lower by what the calendar could not share, and without years in which work has no place. */
    private YearProblem tightened(YearProblem before, Attempt attempt) {
        Set<Integer> unplaced = unplaced(attempt);
        var limits = new ArrayList<List<Double>>();
        for (int year = 0; year < problem.years(); year++) {
            double whole = problem.limits().get(year).get(YearProblem.MONEY);
            double money = before.limits().get(year).get(YearProblem.MONEY);
            double hours = before.limits().get(year).get(YearProblem.HOURS);
            double lost = attempt.uses().money(year) - attempt.plan().uses().get(year).get(YearProblem.MONEY);
            if (attempt.uses().money(year) > whole) {
                money = Math.max(0, Math.min(money, whole - lost));
            }
            if (isShortOfHours(attempt, unplaced, year)) {
                hours = Math.min(hours, attempt.uses().hours(year));
            }
            limits.add(List.of(money, hours));
        }
        var tasks = new ArrayList<>(before.tasks());
        for (int task : unplaced) {
            WorkOrder order = attempt.orders().get(task);
            if (order != null && !hasPlaceAlone(order)) {
                tasks.set(task, without(tasks.get(task), order.year()));
            }
        }
        return before.withLimits(limits).withTasks(tasks);
    }

    private boolean isShortOfHours(Attempt attempt, Set<Integer> unplaced, int year) {
        return unplaced.stream()
                .map(task -> attempt.orders().get(task))
                .anyMatch(order -> order != null && order.year() == year && hasPlaceAlone(order));
    }

    private boolean hasPlaceAlone(WorkOrder order) {
        return CrewScheduler.schedule(inputs.rules(), List.of(order), new SchedulerSettings(1, 0))
                .unplaced()
                .isEmpty();
    }

    private static Task without(Task task, int year) {
        int first = year == task.firstYear() ? year + 1 : task.firstYear();
        int last = year == task.firstYear() ? task.lastYear() : year - 1;
        return new Task(
                task.values(), task.valueNever(), task.uses(), first, last, task.isMust(), task.setUps());
    }

    private YearPlan accounted(Attempt attempt) {
        var uses = new ArrayList<List<Double>>();
        for (int year = 0; year < problem.years(); year++) {
            uses.add(List.of(attempt.uses().money(year), attempt.uses().hours(year)));
        }
        return new YearPlan(
                attempt.plan().yearOf(),
                attempt.plan().served(),
                attempt.plan().built(),
                value(attempt.plan()),
                uses);
    }

    /** Returns what a plan is worth by the problem. */
    private double value(YearPlan plan) {
        double value = 0;
        for (int task = 0; task < problem.tasks().size(); task++) {
            int year = plan.yearOf().get(task);
            Task of = problem.tasks().get(task);
            value += year == YearPlan.NEVER ? of.valueNever() : of.values().get(year);
        }
        for (int demand = 0; demand < plan.served().size(); demand++) {
            Optional<YearPlan.Served> served = plan.served().get(demand);
            if (served.isPresent()) {
                value += problem.connections()
                        .orElseThrow()
                        .wishes()
                        .get(demand)
                        .values()
                        .get(served.get().year());
            }
        }
        return value;
    }
}
