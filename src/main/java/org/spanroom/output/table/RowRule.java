package org.spanroom.output.table;

import java.util.List;

/**
 * What cells of one row have to do with one another, for those who read a table back.
 *
 * @param kind what holds
 * @param columns whose cells these are; a rule of columns that a table does not have does not apply
 */
public record RowRule(Kind kind, List<String> columns) {
    /** Numbers are written with at most three decimals, each rounded by itself. */
    private static final double ROUNDING = 0.016;

    private static final double RELATIVE_ROUNDING = 1e-12;

    /** What holds. */
    public enum Kind {
        /** No cell is empty. */
        FILLED,
        /** All cells are empty, or none is. */
        TOGETHER,
        /** The first cell is empty where the second is not, and the other way around. */
        EITHER,
        /** Each number is at most the next one. */
        ASCENDING,
        /** The first number is the second minus the third. */
        DIFFERENCE,
        /** The first two numbers add up to at most the third. */
        PARTS,
        /** The first two numbers, added up and multiplied by the third, are at most the fourth. */
        PRICED_PARTS
    }

    public RowRule {
        columns = List.copyOf(columns);
    }

    /**
     * Finds the column whose cell breaks the rule.
     *
     * @param numbers of the cells, in the order of the columns; NaN where a cell is empty or a text
     * @param empty whether each cell is empty
     * @return its place among the columns of the rule; -1 where none does
     */
    public int broken(double[] numbers, boolean[] empty) {
        return switch (kind) {
            case FILLED -> first(empty, true);
            case TOGETHER -> first(empty, !empty[0]);
            case EITHER -> empty[0] == empty[1] ? 0 : -1;
            case ASCENDING -> descent(numbers);
            case DIFFERENCE -> isDifference(numbers) ? -1 : 0;
            case PARTS -> numbers[0] + numbers[1] > numbers[2] + tolerance(numbers[2]) ? 0 : -1;
            case PRICED_PARTS -> isPriced(numbers) ? -1 : 2;
        };
    }

    /** Returns what was expected of a column, for a message. */
    public String expected(int column) {
        return switch (kind) {
            case FILLED -> "a value";
            case TOGETHER -> "a value where " + columns.get(0) + " has one, and none where it is empty";
            case EITHER -> "a value where " + columns.get(1) + " is empty, and none elsewhere";
            case ASCENDING -> "a number not above " + columns.get(column + 1);
            case DIFFERENCE -> columns.get(1) + " minus " + columns.get(2);
            case PARTS -> "a number that is at most " + columns.get(2) + " together with " + columns.get(1);
            case PRICED_PARTS ->
                "a number that is at most %s when multiplied by the sum of %s and %s"
                        .formatted(columns.get(3), columns.get(0), columns.get(1));
        };
    }

    private static int first(boolean[] empty, boolean wanted) {
        for (int column = 0; column < empty.length; column++) {
            if (empty[column] == wanted) {
                return column;
            }
        }
        return -1;
    }

    /** Numbers that are not there are passed over. */
    private static int descent(double[] numbers) {
        for (int column = 0; column + 1 < numbers.length; column++) {
            if (numbers[column] > numbers[column + 1] + tolerance(numbers[column + 1])) {
                return column;
            }
        }
        return -1;
    }

    private static boolean isDifference(double[] numbers) {
        double miss = Math.abs(numbers[1] - numbers[2] - numbers[0]);
        return !(miss > tolerance(Math.max(Math.abs(numbers[1]), Math.abs(numbers[2]))));
    }

    /** Each part and the price may be off by their rounding. */
    private static boolean isPriced(double[] numbers) {
        double parts = numbers[0] + numbers[1];
        double rounding = ROUNDING * (numbers[2] + parts);
        return !(parts * numbers[2] > numbers[3] + rounding + tolerance(numbers[3]));
    }

    private static double tolerance(double number) {
        return ROUNDING + RELATIVE_ROUNDING * Math.abs(number);
    }
}
