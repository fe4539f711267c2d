package org.spanroom.program;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.model.program.WorkOrder;
import org.spanroom.program.annual.YearPlan;
import org.spanroom.program.annual.YearProblem;

/** What the years of a program use by its calendar: only set-ups that are shared there count as shared. */
final class CalendarUses {
    private final double[] money;
    private final double[] hours;

    private CalendarUses(int years) {
        money = new double[years];
        hours = new double[years];
    }

    /** Adds up the placed work, and the new ducts of the plan. */
    static CalendarUses of(
            List<EligibleSpan> eligibleSpans,
            YearProblem problem,
            YearPlan plan,
            SortedMap<Integer, WorkOrder> orders,
            WorkCalendar calendar) {
        var uses = new CalendarUses(problem.years());
        Map<String, Integer> taskBySpan = new HashMap<>();
        orders.forEach((task, order) -> taskBySpan.put(order.spanId(), task));
        for (WorkCalendar.Entry entry : calendar.entries()) {
            EligibleSpan span =
                    eligibleSpans.get(taskBySpan.getOrDefault(entry.order().spanId(), -1));
            uses.money[entry.order().year()] += money(span, entry.sharedHours());
            uses.hours[entry.order().year()] += entry.siteHours();
        }
        plan.built().forEach((piece, years) -> {
            for (int duct = 0; duct < years.size(); duct++) {
                uses.money[years.get(duct)] +=
                        problem.connections().orElseThrow().buildUse(piece, YearProblem.MONEY, duct == 0);
            }
        });
        return uses;
    }

    /** Returns the cost of a span against the budget where it shares hours with the work before it. */
    static double money(EligibleSpan span, double sharedHours) {
        return span.budgetMoney() - sharedHours * span.facts().siteHourMoney() * span.budgetRatio();
    }

    double money(int year) {
        return money[year];
    }

    double hours(int year) {
        return hours[year];
    }

    /** Returns what a year uses of a resource of the year problem. */
    double of(int year, int resource) {
        return resource == YearProblem.MONEY ? money[year] : hours[year];
    }
}
