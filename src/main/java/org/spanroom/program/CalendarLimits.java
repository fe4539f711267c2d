package org.spanroom.program;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import org.spanroom.model.program.WorkOrder;
import org.spanroom.program.annual.YearProblem;

/** Whether a calendar keeps the limits of the years, and what has to go where it does not. */
final class CalendarLimits {
    private static final double TOLERANCE_RATIO = 1e-9;
    private static final List<Integer> RESOURCES = List.of(YearProblem.MONEY, YearProblem.HOURS);

    private final ProgramInputs inputs;
    private final YearProblem problem;

    CalendarLimits(ProgramInputs inputs, YearProblem problem) {
        this.inputs = inputs;
        this.problem = problem;
    }

    /** Returns by how much a year exceeds its limit of a resource; 0 where it keeps it. */
    double excess(CalendarUses uses, int year, int resource) {
        double used = uses.of(year, resource);
        double excess = used - problem.limits().get(year).get(resource);
        return excess > TOLERANCE_RATIO * used ? excess : 0;
    }

    /** Returns by what share the limits are exceeded, of all years and resources together; 0 where all are kept. */
    double excessRatio(CalendarUses uses) {
        double ratio = 0;
        for (int year = 0; year < problem.years(); year++) {
            for (int resource : RESOURCES) {
                double excess = excess(uses, year, resource);
                ratio += excess > 0 ? excess / uses.of(year, resource) : 0;
            }
        }
        return ratio;
    }

    /** Returns the tasks to be dropped from years that exceed a limit: that of the least priority for its money first, and no musts. */
    Set<Integer> tooMuch(SortedMap<Integer, WorkOrder> orders, CalendarUses uses) {
        Set<Integer> dropped = new HashSet<>();
        for (int year = 0; year < problem.years(); year++) {
            for (int resource : RESOURCES) {
                double excess = excess(uses, year, resource);
                for (int task : excess > 0 ? leastFirst(orders, year) : List.<Integer>of()) {
                    if (excess <= 0) {
                        break;
                    }
                    dropped.add(task);
                    excess -= problem.tasks().get(task).uses().get(resource);
                }
            }
        }
        return dropped;
    }

    private List<Integer> leastFirst(SortedMap<Integer, WorkOrder> orders, int year) {
        var tasks = new ArrayList<Integer>();
        orders.forEach((task, order) -> {
            if (order.year() == year && !inputs.eligibleSpans().get(task).isMust()) {
                tasks.add(task);
            }
        });
        tasks.sort(Comparator.comparingDouble(
                task -> Objects.requireNonNull(orders.get(task)).priorityMoney()
                        / Math.max(1, inputs.eligibleSpans().get(task).budgetMoney())));
        return tasks;
    }

    /** Returns which limits are exceeded and by how much, a line each. */
    List<String> words(CalendarUses uses) {
        var lines = new ArrayList<String>();
        for (int year = 0; year < problem.years(); year++) {
            for (int resource : RESOURCES) {
                double excess = excess(uses, year, resource);
                if (excess > 0) {
                    lines.add(words(uses, year, resource, excess));
                }
            }
        }
        return lines;
    }

    private String words(CalendarUses uses, int year, int resource, double excess) {
        return String.format(
                        Locale.ROOT,
                        resource == YearProblem.MONEY
                                ? "the musts of year %d cost %,.0f, %,.0f more than its budget of %,.0f"
                                : "the musts of year %d take %,.1f crew-hours, %,.1f more than the %,.1f there",
                        year + 1,
                        uses.of(year, resource),
                        excess,
                        problem.limits().get(year).get(resource))
                + ": the calendar cannot share all the set-ups that the year plan shares";
    }
}
