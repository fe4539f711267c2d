package org.spanroom.program;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.WorkOrder;
import org.spanroom.program.annual.Connections;
import org.spanroom.program.annual.YearPlan;

/** The tasks of a year plan as work orders for the calendar. */
final class ProgramOrders {
    /** Added to the priority of what must be done, so that nothing else goes first. */
    private static final double MUST = 1e12;

    private ProgramOrders() {}

    /** Returns the orders, in the order of the eligible spans, by the number of their task. */
    static SortedMap<Integer, WorkOrder> of(ProgramInputs inputs, Optional<Connections> connections, YearPlan plan) {
        Map<Integer, List<Integer>> demands = connections
                .map(all -> new ServedWorks(all, plan).demandsByTask())
                .orElse(Map.of());
        var orders = new TreeMap<Integer, WorkOrder>();
        for (int task = 0; task < inputs.eligibleSpans().size(); task++) {
            if (plan.yearOf().get(task) != YearPlan.NEVER) {
                orders.put(task, order(inputs, plan, task, demands.getOrDefault(task, List.of())));
            }
        }
        return orders;
    }

    private static WorkOrder order(ProgramInputs inputs, YearPlan plan, int task, List<Integer> demands) {
        EligibleSpan span = inputs.eligibleSpans().get(task);
        double priority = span.worthMoney() + (span.isMust() ? MUST : 0);
        LocalDate notAfter = LocalDate.MAX;
        for (int demand : demands) {
            Connection connection = inputs.connectPlan().usable().get(demand);
            priority += connection.must()
                    ? MUST
                    : inputs.servedRatio() * connection.value().orElse(0);
            LocalDate neededBy = connection.neededBy().orElse(LocalDate.MAX);
            notAfter = neededBy.isBefore(notAfter) ? neededBy : notAfter;
        }
        return new WorkOrder(
                span.facts().spanId(),
                inputs.network().sections().get(span.section()).id(),
                plan.yearOf().get(task),
                priority,
                span.recovery().siteHours(),
                span.facts().isNight(),
                span.facts().vaultA(),
                span.facts().vaultB(),
                span.facts().sharedAHours(),
                span.facts().sharedBHours(),
                span.facts().district(),
                span.leadDays(),
                span.checkDays(),
                span.recovery().notBefore().orElse(LocalDate.MIN),
                notAfter,
                span.closures());
    }
}
