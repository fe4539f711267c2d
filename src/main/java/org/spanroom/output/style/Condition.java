package org.spanroom.output.style;

import java.util.List;

/** Which rows a rule is for, in the terms that both style languages have. A comparison with an empty cell does not hold. */
sealed interface Condition {
    /** Every row. */
    record Always() implements Condition {}

    /** Rows whose cell compares with a value so. */
    record Compare(String column, Comparison comparison, Object value) implements Condition {}

    /** Rows whose cell is empty. */
    record Empty(String column) implements Condition {}

    /** Rows whose cell, a list of words, has a word. */
    record Mentions(String column, String word) implements Condition {}

    /** Rows for which all parts hold. */
    record And(List<Condition> parts) implements Condition {
        public And {
            parts = List.copyOf(parts);
        }
    }

    /** Rows for which a part holds. */
    record Or(List<Condition> parts) implements Condition {
        public Or {
            parts = List.copyOf(parts);
        }
    }

    /** How a cell and a value compare: as an operator, and as an element of an OGC filter. */
    enum Comparison {
        EQUAL("=", "PropertyIsEqualTo"),
        DIFFERENT("<>", "PropertyIsNotEqualTo"),
        AT_MOST("<=", "PropertyIsLessThanOrEqualTo"),
        ABOVE(">", "PropertyIsGreaterThan");

        private final String operator;
        private final String element;

        Comparison(String operator, String element) {
            this.operator = operator;
            this.element = element;
        }

        String operator() {
            return operator;
        }

        String element() {
            return element;
        }
    }

    static Condition equal(String column, Object value) {
        return new Compare(column, Comparison.EQUAL, value);
    }

    static Condition atMost(String column, int value) {
        return new Compare(column, Comparison.AT_MOST, value);
    }

    static Condition above(String column, int value) {
        return new Compare(column, Comparison.ABOVE, value);
    }

    /** Returns rows whose cell has one of some values. */
    static Condition among(String column, List<String> values) {
        return values.size() == 1
                ? equal(column, values.get(0))
                : new Or(values.stream().map(value -> equal(column, value)).toList());
    }

    /** Returns rows whose cell has none of some values, among them rows whose cell is empty. */
    static Condition notAmong(String column, List<String> values) {
        return new Or(List.of(
                new Empty(column),
                new And(values.stream()
                        .<Condition>map(value -> new Compare(column, Comparison.DIFFERENT, value))
                        .toList())));
    }

    static Condition both(Condition one, Condition other) {
        return new And(List.of(one, other));
    }
}
