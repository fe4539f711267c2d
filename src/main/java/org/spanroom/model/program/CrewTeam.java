package org.spanroom.model.program;

import org.spanroom.model.Check;

/**
 * A crew of the program.
 *
 * @param name what it is called
 * @param shiftsPerWeek how many shifts it works in a week, from Monday on, each on its own day
 * @param shiftHours hours on site in one of them
 * @param shifts which shifts it works
 */
public record CrewTeam(String name, int shiftsPerWeek, double shiftHours, Shifts shifts) {
    /** Which shifts a crew works. A crew that works either works only days or only nights within one week. */
    public enum Shifts {
        DAYS,
        NIGHTS,
        EITHER
    }

    public CrewTeam {
        Check.positive("shiftHours", shiftHours);
        if (shiftsPerWeek < 1 || shiftsPerWeek > 7) {
            throw new IllegalArgumentException("shiftsPerWeek must be from 1 to 7, was " + shiftsPerWeek);
        }
    }

    /** Returns whether it can do work by night, or by day. */
    public boolean works(boolean night) {
        return shifts == Shifts.EITHER || (shifts == Shifts.NIGHTS) == night;
    }
}
