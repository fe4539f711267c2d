package org.spanroom.output.sheet;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.spanroom.model.UnitSystem;

/**
 * What all pages of one set of sheets share.
 *
 * @param runCode code of the run, see {@link org.spanroom.output.RunCode}
 * @param startedAt when the run was started; nothing else of a page has a time
 * @param version of the program that made the run
 * @param units in which crews read and write
 * @param sections how many sections there are
 * @param currency of all money
 */
public record SheetBook(
        String runCode,
        Instant startedAt,
        String version,
        UnitSystem units,
        SheetPaper paper,
        int sections,
        String currency) {
    /** Returns the day of the run. */
    public LocalDate day() {
        return LocalDate.ofInstant(startedAt, ZoneOffset.UTC);
    }

    SheetUnits in() {
        return new SheetUnits(units);
    }
}
