package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * What an earlier program says of each span.
 *
 * @param planned spans of the program by name, in the order of its calendar
 * @param reserved the other eligible spans by name, in the order of its reserve
 */
public record RecordedProgram(Map<String, Planned> planned, Map<String, Reserved> reserved) {
    public RecordedProgram {
        planned = Collections.unmodifiableMap(new LinkedHashMap<>(planned));
        reserved = Collections.unmodifiableMap(new LinkedHashMap<>(reserved));
    }

    /**
     * A span of the program.
     *
     * @param year number of its year, from 1
     * @param week the Monday of the week in which the work begins
     * @param crew name of the crew
     * @param place place in the week of this crew, from 1
     * @param firstDay day of its first shift
     * @param lastDay day of its last shift
     * @param amounts what it takes and costs
     * @param applyBy the last day to apply for its permits
     * @param connections names of the connections that need it
     * @param why why it is in the program
     */
    public record Planned(
            String spanId,
            String sectionId,
            int year,
            LocalDate week,
            String crew,
            int place,
            LocalDate firstDay,
            LocalDate lastDay,
            Amounts amounts,
            LocalDate applyBy,
            List<String> connections,
            String why) {
        public Planned {
            connections = List.copyOf(connections);
        }
    }

    /**
     * What a span of the program takes and costs, less what it shares with the work before it.
     *
     * @param siteHours hours on site
     * @param sharedHours hours of set-up that it shares
     * @param costMoney cost with all rates at their values
     * @param budgetMoney the part of its cost that counts against the budget
     */
    public record Amounts(double siteHours, double sharedHours, double costMoney, double budgetMoney) {
        /** Returns whether it shares a set-up, so that it takes less than by itself. */
        public boolean isShared() {
            return sharedHours > 0;
        }
    }

    /**
     * An eligible span that is not in the program.
     *
     * @param place its place in the order in which eligible spans take the place of a span that fails, from 1; empty for one that cannot
     * @param whyNot why it is not in the program
     */
    public record Reserved(String spanId, String sectionId, OptionalInt place, String whyNot) {}
}
