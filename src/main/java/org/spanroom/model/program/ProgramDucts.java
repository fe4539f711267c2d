package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.List;

/**
 * New ducts that a program builds in a section in one year.
 *
 * @param section the section
 * @param year number of the year, from 0
 * @param ducts how many are built
 * @param costs what they cost
 * @param budgetMoney the part of that which counts against the budget
 * @param applyBy the last day to apply for their permits, so that they can be built in the year
 * @param connections names of the connections that go through them
 */
public record ProgramDucts(
        SectionOffer section,
        int year,
        int ducts,
        Costs costs,
        double budgetMoney,
        LocalDate applyBy,
        List<String> connections) {
    public ProgramDucts {
        connections = List.copyOf(connections);
    }
}
