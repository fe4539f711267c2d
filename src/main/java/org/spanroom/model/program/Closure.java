package org.spanroom.model.program;

import java.time.LocalDate;

/**
 * Days on which no work may be done: a stop window, an embargo, a zone's dates, a change freeze.
 *
 * @param name what it is, for people
 * @param from its first day
 * @param until its last day
 */
public record Closure(String name, LocalDate from, LocalDate until) {
    public Closure {
        if (until.isBefore(from)) {
            throw new IllegalArgumentException(name + ": from " + from + " until " + until);
        }
    }

    /** Returns whether no work may be done on a day. */
    public boolean holds(LocalDate day) {
        return !day.isBefore(from) && !day.isAfter(until);
    }
}
