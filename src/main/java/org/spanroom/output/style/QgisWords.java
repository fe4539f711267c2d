package org.spanroom.output.style;

import static java.util.stream.Collectors.joining;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.function.UnaryOperator;

/** Conditions, numbers and colors in the words of QGIS. */
final class QgisWords {
    private static final int HEX = 16;

    private QgisWords() {}

    /** Returns a condition as an expression, empty where it holds for every row. */
    static String expression(Condition condition, UnaryOperator<String> names) {
        if (condition instanceof Condition.Compare compare) {
            return column(compare.column(), names) + " " + compare.comparison().operator() + " "
                    + literal(compare.value());
        }
        if (condition instanceof Condition.Empty empty) {
            return column(empty.column(), names) + " IS NULL";
        }
        if (condition instanceof Condition.Mentions mentions) {
            return column(mentions.column(), names) + " LIKE " + literal("%" + mentions.word() + "%");
        }
        if (condition instanceof Condition.And and) {
            return joined(and.parts(), " AND ", names);
        }
        if (condition instanceof Condition.Or or) {
            return joined(or.parts(), " OR ", names);
        }
        return "";
    }

    private static String joined(List<Condition> parts, String word, UnaryOperator<String> names) {
        return parts.stream().map(part -> expression(part, names)).collect(joining(word, "(", ")"));
    }

    /** Returns the column in quotation marks; names of columns have none in them. */
    static String column(String column, UnaryOperator<String> names) {
        return '"' + names.apply(column) + '"';
    }

    private static String literal(Object value) {
        return value instanceof String text ? "'" + text.replace("'", "''") + "'" : value.toString();
    }

    /** Returns by how many millimeters a line is moved aside. */
    static String offset(Symbol.Side side, UnaryOperator<String> names) {
        return "CASE WHEN @map_scale <= " + side.scales().farthest() + " THEN coalesce(" + column(side.column(), names)
                + ", 0) * " + number(side.stepMm()) + " ELSE 0 END";
    }

    /** Returns a color as red, green, blue and opacity. */
    static String color(String hex) {
        var color = new StringBuilder();
        for (int at = 1; at < hex.length(); at += 2) {
            color.append(Integer.parseInt(hex.substring(at, at + 2), HEX)).append(',');
        }
        return color.append("255").toString();
    }

    static String number(double value) {
        return BigDecimal.valueOf(value)
                .setScale(2, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }
}
