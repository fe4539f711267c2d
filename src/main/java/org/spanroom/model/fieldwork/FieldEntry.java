package org.spanroom.model.fieldwork;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.Check;

/**
 * One entry of the field book: one fact of one span or vault.
 *
 * @param number of the entry, from 1, in the order of entering; never used twice
 * @param subject id of the span or vault that it is about
 * @param item what of it; see {@link FactItem}
 * @param planned what the sheet said, where it said something
 * @param by who found it
 * @param day on which it was found
 * @param supersedes the earlier entry that this one corrects
 * @param run code of the run whose sheets were worked from
 */
public record FieldEntry(
        int number,
        FieldFact fact,
        String subject,
        String item,
        FactValue value,
        Optional<FactValue> planned,
        String by,
        LocalDate day,
        OptionalInt supersedes,
        String run,
        String note) {
    public FieldEntry {
        Check.positive("number", number);
        Check.notBlank("subject", subject);
    }

    /** Returns the same entry about another item. */
    public FieldEntry withItem(String other) {
        return new FieldEntry(number, fact, subject, other, value, planned, by, day, supersedes, run, note);
    }
}
