package org.spanroom.input.layer;

import java.util.Optional;
import org.spanroom.model.Counted;

/**
 * The rule for rows of a table that have more cells than its header: none is used. What follows a separator too many, such as a decimal
 * comma, is in the wrong column, and the last cell may be empty for that very reason.
 */
public final class SurplusCells {
    public static final String REMEDY =
            "Put a cell that contains the separator into quotes (\"), or remove separators at the end of the row.";

    private SurplusCells() {}

    /** Says what is wrong with a row of so many cells under a header of so many. */
    public static Optional<String> problem(int cells, int headerCells) {
        return cells > headerCells
                ? Optional.of("it has " + Counted.of(cells, "cell") + ", and the header " + headerCells)
                : Optional.empty();
    }

    /** Says the same with its remedy, for tables whose reasons are one text. */
    public static Optional<String> problemAndRemedy(int cells, int headerCells) {
        return problem(cells, headerCells).map(problem -> problem + ". " + REMEDY.substring(0, REMEDY.length() - 1));
    }
}
