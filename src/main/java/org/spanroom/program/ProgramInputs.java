package org.spanroom.program;

import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.YearBudget;

/**
 * What a program is made of.
 *
 * @param network what the sections offer, spans that are done or have failed already counted
 * @param eligibleSpans the spans that may be recovered
 * @param connections those that are to be served
 * @param connectPlan the same as a design problem
 * @param rules years, crews and days without work
 * @param budgets what each year has
 * @param budgetCost the cost that counts against the budget
 * @param servedRatio times the value of a connection
 * @param laterYearRatio what something is worth a year later
 * @param previous the year of each span of an earlier program
 * @param changeMoney what a change of it costs, as worth
 */
public record ProgramInputs(
        DuctNetwork network,
        List<EligibleSpan> eligibleSpans,
        List<Connection> connections,
        ConnectPlan connectPlan,
        CalendarRules rules,
        List<YearBudget> budgets,
        ToDoubleFunction<Costs> budgetCost,
        double servedRatio,
        double laterYearRatio,
        Map<String, Integer> previous,
        double changeMoney) {
    public ProgramInputs {
        eligibleSpans = List.copyOf(eligibleSpans);
        connections = List.copyOf(connections);
        budgets = List.copyOf(budgets);
        previous = Map.copyOf(previous);
    }

    /** Returns what something done in a year is worth, over its worth in the first year. */
    double laterRatio(int year) {
        return Math.pow(laterYearRatio, year);
    }

    /** Returns the same with other budgets. */
    public ProgramInputs withBudgets(List<YearBudget> other) {
        return new ProgramInputs(
                network,
                eligibleSpans,
                connections,
                connectPlan,
                rules,
                other,
                budgetCost,
                servedRatio,
                laterYearRatio,
                previous,
                changeMoney);
    }
}
