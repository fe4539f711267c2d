package org.spanroom.model.effort;

import java.util.regex.Pattern;
import org.spanroom.model.Check;

/**
 * One rate: the value used, the range that it is believed to lie in, and the source of both. Its unit stands in
 * its {@link RateKey}.
 *
 * @param source where the value was read, or {@code illustrative}
 * @param date the day, month or year that it holds for
 */
public record Rate(double value, double low, double high, String source, String date) {
    private static final Pattern DATE = Pattern.compile("\\d{4}(-\\d{2}(-\\d{2})?)?");

    public Rate {
        Check.notNegative("low", low);
        Check.within("value", value, low, high);
        Check.notNegative("high", high);
        Check.notBlank("source", source);
        if (!DATE.matcher(date).matches()) {
            throw new IllegalArgumentException(
                    "date must be a year, such as 2026, or 2026-05 or 2026-05-31, was " + date);
        }
    }

    /** Returns the value below which a share of all draws lies, the range being drawn as a triangle with its top at the value. */
    double quantileInUnit(double shareRatio) {
        double widthInUnit = high - low;
        if (widthInUnit == 0) {
            return value;
        }
        boolean rising = shareRatio * widthInUnit < value - low;
        return rising
                ? low + Math.sqrt(shareRatio * widthInUnit * (value - low))
                : high - Math.sqrt((1 - shareRatio) * widthInUnit * (high - value));
    }
}
