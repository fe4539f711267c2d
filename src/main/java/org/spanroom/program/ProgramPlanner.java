package org.spanroom.program;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import org.spanroom.model.program.Connection;
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

    private final ProgramInputs inputs;
    private final YearProblem problem;
    private final YearSolver solver;
    private final CalendarLimits limits;
    private final Map<Integer, String> whyUnplaced = new HashMap<>();

    public ProgramPlanner(ProgramInputs inputs, YearProblem problem, YearSolver solver) {
        this.inputs = inputs;
        this.problem = problem;
        this.solver = solver;
        this.limits = new CalendarLimits(inputs, problem);
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
     * @param shortfalls which musts are not in it, and which limits its musts exceed, a line each
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

    /** What came of one solution of the year problem. */
    private record Found(Attempt fitting, YearSolver.Solved solved) {}

    /** Returns the program, or why there is none. */
    public Optional<Planned> plan(List<String> whyNot) {
        YearSolver.Solved first = solver.solve(problem, YearSolver.Effort.FULL);
        whyNot.addAll(first.shortfalls());
        if (first.plan().isEmpty()) {
            return Optional.empty();
        }
        YearSolver.Solved now = first;
        YearProblem tightened = problem;
        Optional<Found> best = Optional.empty();
        int round = 0;
        while (now.plan().isPresent()) {
            Attempt attempt = attempt(now.plan().get());
            var found = new Found(trimmed(attempt), now);
            if (best.isEmpty() || isBetter(found, best.get())) {
                best = Optional.of(found);
            }
            if ((found.fitting().plan().equals(attempt.plan()) && limits.excessRatio(attempt.uses()) == 0)
                    || round == MOST_ROUNDS) {
                break;
            }
            round++;
            tightened = tightened(tightened, attempt);
            now = solver.solve(tightened, YearSolver.Effort.REPAIR);
        }
        Found found = best.orElseThrow();
        return Optional.of(new Planned(
                accounted(found.fitting()),
                found.fitting().orders(),
                found.fitting().calendar(),
                value(first.plan().get()),
                first.boundValue(),
                round,
                shortfalls(found),
                first.isWhole()));
    }

    /** What lacks fewer musts is better, then what exceeds the limits by less, then what is worth more. */
    private boolean isBetter(Found one, Found other) {
        int fewer = missing(other).size() - missing(one).size();
        if (fewer != 0) {
            return fewer > 0;
        }
        double less = limits.excessRatio(other.fitting().uses())
                - limits.excessRatio(one.fitting().uses());
        return less != 0
                ? less > 0
                : value(one.fitting().plan()) > value(other.fitting().plan());
    }

    private List<String> shortfalls(Found found) {
        var lines = new ArrayList<>(missing(found));
        lines.addAll(limits.words(found.fitting().uses()));
        return lines;
    }

    /** Returns the musts that the year plan leaves out, and those that its calendar lost, a line each. */
    private List<String> missing(Found found) {
        var lines = new ArrayList<>(found.solved().shortfalls());
        lines.addAll(lostMusts(found));
        return lines;
    }

    /** Returns the musts of the year plan that the calendar lost, a line each. */
    private List<String> lostMusts(Found found) {
        YearPlan before = found.solved().plan().orElseThrow();
        YearPlan after = found.fitting().plan();
        var lines = new ArrayList<String>();
        for (int task = 0; task < problem.tasks().size(); task++) {
            if (problem.tasks().get(task).isMust() && after.yearOf().get(task) == YearPlan.NEVER) {
                lines.add("span " + inputs.eligibleSpans().get(task).facts().spanId()
                        + " of must has no place in the calendar: " + whyUnplaced.getOrDefault(task, "no room"));
            }
        }
        for (int demand = 0; demand < before.served().size(); demand++) {
            Connection connection = inputs.connectPlan().usable().get(demand);
            if (connection.must()
                    && before.served().get(demand).isPresent()
                    && after.served().get(demand).isEmpty()) {
                lines.add("connection " + connection.name()
                        + ", a must, is not served: its work has no place in the calendar");
            }
        }
        return lines;
    }

    private Attempt attempt(YearPlan plan) {
        SortedMap<Integer, WorkOrder> orders = ProgramOrders.of(inputs, problem.connections(), plan);
        List<WorkOrder> list = List.copyOf(orders.values());
        WorkCalendar calendar = CrewScheduler.schedule(inputs.rules(), list, SchedulerSettings.forOrders(list.size()));
        return new Attempt(
                plan, orders, calendar, CalendarUses.of(inputs.eligibleSpans(), problem, plan, orders, calendar));
    }

    /** Returns the attempt itself if it keeps all limits, or else one with less work that does. */
    private Attempt trimmed(Attempt attempt) {
        Attempt fitting = attempt;
        for (int trim = 0; trim < MOST_TRIMS; trim++) {
            Set<Integer> dropped = unplaced(fitting);
            if (dropped.isEmpty()) {
                dropped = limits.tooMuch(fitting.orders(), fitting.uses());
            }
            if (dropped.isEmpty()) {
                return fitting;
            }
            fitting = attempt(ServedWorks.without(problem.connections(), fitting.plan(), dropped));
        }
        return fitting;
    }

    private Set<Integer> unplaced(Attempt attempt) {
        Map<String, String> spans = new HashMap<>();
        attempt.calendar().unplaced().forEach(row -> spans.put(row.order().spanId(), row.why()));
        Set<Integer> tasks = new HashSet<>();
        attempt.orders().forEach((task, order) -> {
            String why = spans.get(order.spanId());
            if (why != null) {
                tasks.add(task);
                whyUnplaced.put(task, why);
            }
        });
        return tasks;
    }

    /** Returns the problem with the limits of its years lower by what the calendar could not share, and without years in which work has no place. */
    private YearProblem tightened(YearProblem before, Attempt attempt) {
        Set<Integer> unplaced = unplaced(attempt);
        var lower = new ArrayList<List<Double>>();
        for (int year = 0; year < problem.years(); year++) {
            double hours = lower(before, attempt, year, YearProblem.HOURS);
            if (isShortOfHours(attempt, unplaced, year)) {
                hours = Math.min(hours, attempt.uses().hours(year));
            }
            lower.add(List.of(lower(before, attempt, year, YearProblem.MONEY), hours));
        }
        var tasks = new ArrayList<>(before.tasks());
        for (int task : unplaced) {
            WorkOrder order = attempt.orders().get(task);
            if (order != null && !hasPlaceAlone(order)) {
                tasks.set(task, without(tasks.get(task), order.year()));
            }
        }
        return before.withLimits(lower).withTasks(tasks);
    }

    private double lower(YearProblem before, Attempt attempt, int year, int resource) {
        double limit = before.limits().get(year).get(resource);
        if (limits.excess(attempt.uses(), year, resource) == 0) {
            return limit;
        }
        double lost = attempt.uses().of(year, resource)
                - attempt.plan().uses().get(year).get(resource);
        return Math.max(0, Math.min(limit, problem.limits().get(year).get(resource) - lost));
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
        return new Task(task.values(), task.valueNever(), task.uses(), first, last, task.isMust(), task.setUps());
    }

    private YearPlan accounted(Attempt attempt) {
        var uses = new ArrayList<List<Double>>();
        for (int year = 0; year < problem.years(); year++) {
            uses.add(List.of(attempt.uses().money(year), attempt.uses().hours(year)));
        }
        return new YearPlan(
                attempt.plan().yearOf(), attempt.plan().served(), attempt.plan().built(), value(attempt.plan()), uses);
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
