package org.spanroom.model.effort;

import java.util.regex.Pattern;
import org.spanroom.model.Check;

/**
 * One rate: the value used, the range that it is expected to be in, and the source of both. Its unit is in
 * its {@link RateKey}.
 *
 * @param source where the value was read, or {@code illustrative}
 * @param date the day, month or year of the value
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

    /**
     * Returns what a share of all draws is below. Half of them are below the value, which is the likeliest too; on either side they
     * thin out as a triangle that ends at the end of the range.
     */
    double quantileInUnit(double shareRatio) {
        double endInUnit = shareRatio < 0.5 ? low : high;
        double towardValueRatio = Math.sqrt(2 * Math.min(shareRatio, 1 - shareRatio));
        double drawnInUnit = endInUnit + towardValueRatio * (value - endInUnit);
        // Rounding must not carry a draw past the end of the range, which may be a source's own minimum.
        return Math.max(low, Math.min(high, drawnInUnit));
    }
}
