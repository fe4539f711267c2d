package org.spanroom.output;

import java.time.LocalDate;
import java.util.List;

/**
 * What people have to do in a program on one day or on several, for their calendars.
 *
 * @param from the first day
 * @param until the last day
 * @param kind what sort of event it is
 * @param summary one line
 * @param lines what there is to know in addition, a line each
 */
record AnnualEvent(LocalDate from, LocalDate until, Kind kind, String summary, List<String> lines) {
    AnnualEvent {
        lines = List.copyOf(lines);
        if (until.isBefore(from)) {
            throw new IllegalArgumentException(summary + ": from " + from + " until " + until);
        }
    }

    /** The sorts of events, in the order of events of one day. */
    enum Kind {
        /** The last day to apply for permits or to give notice. */
        PERMITS("permits"),
        /** The last day of field checks. */
        FIELD_CHECK("field check"),
        /** The work of a crew in one week. */
        WORK("work");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** Returns the category in calendars. */
        String words() {
            return words;
        }
    }
}
