package org.spanroom.model.program;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A span that a program recovers.
 *
 * @param span the span
 * @param sectionId its section
 * @param entry its place in the calendar; the year in its order counts from 0
 * @param costs its cost and range, less what it shares with the work before it
 * @param budgetMoney the part of that which counts against the budget
 * @param connections names of the connections that need it, in the order of their table
 * @param chanceRatio chance that its recovery works; empty where it was not simulated
 * @param chosenRatio in what share of the draws it is in the program; empty where that was not calculated
 * @param why why it is in the program, in one sentence
 */
public record ProgramItem(
        EligibleSpan span,
        String sectionId,
        WorkCalendar.Entry entry,
        Costs costs,
        double budgetMoney,
        List<String> connections,
        OptionalDouble chanceRatio,
        OptionalDouble chosenRatio,
        String why) {
    public ProgramItem {
        connections = List.copyOf(connections);
    }

    /** Returns the number of its year, from 0. */
    public int year() {
        return entry.order().year();
    }
}
