package org.spanroom.input.layer;

import java.util.Optional;
import org.spanroom.model.Counted;

/**
 * The rule for rows of a table that have more cells than its header: none is used. What follows a separator too many, such as a decimal
 * comma, is in the wrong column, and the last cell may be empty for that very reason.
 */
public final class SurplusCells {
    private static final String FIX =
            "put a cell that contains the separator into quotes (\"), or remove separators at the end of the row";

    public static final String REMEDY = "P" + FIX.substring(1) + ".";

    private SurplusCells() {}

    /** Says what is wrong with a row of so many cells under a header of so many. */
    public static Optional<String> problem(int cells, int headerCells) {
        return cells > headerCells
                ? Optional.of("it has " + Counted.of(cells, "cell") + ", and the header " + headerCells)
                : Optional.empty();
    }

    /** Says the same with its remedy, as a part of a sentence. */
    public static Optional<String> problemAndRemedy(int cells, int headerCells) {
        return problem(cells, headerCells).map(problem -> problem + "; " + FIX);
    }
}
