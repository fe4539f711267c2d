package org.spanroom.cli;

import java.time.LocalDate;
import org.spanroom.finding.UsageException;
import org.spanroom.model.CalendarDay;

/** Options whose value is a day. */
final class DayOption {
    private DayOption() {}

    /**
     * Returns the day of an option.
     *
     * @throws UsageException if the text is no day of the years that a {@link CalendarDay} has
     */
    static LocalDate of(String option, String text) {
        return CalendarDay.find(text)
                .orElseThrow(() -> new UsageException(
                        option + ": '" + text + "' is not a day such as 2027-03-31, " + CalendarDay.YEARS));
    }
}
