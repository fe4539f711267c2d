package org.spanroom.model.rank;

import java.util.Optional;

/**
 * How a criterion's part of a score is shown. Which criteria there are, and what they judge, is for the ranking to say.
 *
 * @param key the word in config and columns
 * @param unit what quantities are counted in, for people
 * @param decimals digits after the point that a quantity is judged with: as many as its column shows
 * @param stem beginning of the short names of its columns
 * @param quantityColumn the column of the spans that shows the quantity
 * @param ownColumn that column, where no other part of the table has it; empty where one has
 */
public record CriterionInfo(
        String key, String unit, int decimals, String stem, String quantityColumn, Optional<OwnColumn> ownColumn) {
    /**
     * A column of its own for a quantity.
     *
     * @param mostInUnit the largest quantity that there is; the smallest is 0
     */
    public record OwnColumn(String shortName, String meaning, double mostInUnit) {}
}
