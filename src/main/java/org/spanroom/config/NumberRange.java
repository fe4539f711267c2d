package org.spanroom.config;

import java.math.BigDecimal;
import java.math.BigInteger;

/**
 * The range of a number of a config: sizes that occur in practice and, for most numbers, zero.
 *
 * @param leastInUnit the smallest size of a number that is not zero: a smaller one is a slip, and its reciprocal may be infinite
 * @param mostInUnit the largest
 * @param sign whether it may also be zero, or negative
 * @param unit the unit, for the remedy; empty for a number without one
 */
record NumberRange(double leastInUnit, double mostInUnit, Sign sign, String unit) {
    /** Numbers of more digits are shown as powers of ten. */
    private static final double LONGEST_PLAIN = 1e7;

    private static final double SHORTEST_PLAIN = 1e-4;

    /** Which numbers there may be beyond those above zero. */
    enum Sign {
        POSITIVE,
        NOT_NEGATIVE,
        ANY
    }

    /** Where negative numbers are not allowed, a negative zero is not allowed either. */
    boolean contains(double number) {
        double size = Math.abs(number);
        boolean isNegative = Double.compare(number, 0.0) < 0;
        boolean isOfSign = sign == Sign.ANY || (!isNegative && (size > 0 || sign == Sign.NOT_NEGATIVE));
        return isOfSign && (size == 0 || size >= leastInUnit) && size <= mostInUnit;
    }

    /** Returns the range in words, for a number that may have decimals. */
    String words() {
        return (sign == Sign.POSITIVE ? "" : "0, or ") + "from " + shown(leastInUnit) + " to " + shown(mostInUnit)
                + (sign == Sign.ANY ? " with either sign" : "");
    }

    /** Returns the range in words, for whole numbers. */
    String wholeWords() {
        double from = switch (sign) {
            case POSITIVE -> leastInUnit;
            case NOT_NEGATIVE -> 0;
            case ANY -> -mostInUnit;
        };
        return "from " + shown(from) + " to " + shown(mostInUnit);
    }

    /** Returns what to do about a number outside. */
    String remedy() {
        return unit.isEmpty() ? "Check the number." : "Check the number and its unit (" + unit + ").";
    }

    private static String shown(double bound) {
        double size = Math.abs(bound);
        BigDecimal digits = BigDecimal.valueOf(bound).stripTrailingZeros();
        if (size == 0 || (size >= SHORTEST_PLAIN && size <= LONGEST_PLAIN)) {
            return digits.toPlainString();
        }
        return digits.unscaledValue().abs().equals(BigInteger.ONE)
                ? (bound < 0 ? "-" : "") + "1e" + -digits.scale()
                : digits.toPlainString();
    }
}
