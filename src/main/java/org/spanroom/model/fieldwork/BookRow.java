package org.spanroom.model.fieldwork;

import java.time.LocalDate;

/**
 * One row of the field book, as it is written.
 *
 * @param enteredOn the day on which it was entered
 */
public record BookRow(FieldEntry entry, LocalDate enteredOn) {
    /** Version of the rows, which each of them has in its first cell. */
    public static final int FORMAT = 1;
}
