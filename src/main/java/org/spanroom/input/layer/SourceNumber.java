package org.spanroom.input.layer;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.spanroom.model.Unit;

/**
 * A number as people write it into text fields: 4, 4.0, 4,5, 1-1/4, 3 1/2, with a unit behind it or without.
 *
 * @param unit the unit after the number, which is then used instead of the field's
 */
public record SourceNumber(double inUnit, Optional<Unit> unit) {
    private static final Pattern DECIMAL =
            Pattern.compile("([-+]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)(?:[eE][-+]?\\d{1,3})?)\\s*(\\D.*)?");

    private static final Pattern FRACTION = Pattern.compile("(?:(\\d{1,6})[-\\s]+)?(\\d{1,4})/(\\d{1,4})\\s*(\\D.*)?");

    /** A comma before three digits may be a thousands mark or a decimal mark: it is ambiguous. */
    private static final Pattern AMBIGUOUS = Pattern.compile("[-+]?\\d{1,3},\\d{3}\\D?.*");

    /** Reads a text; empty if it is no number, or one that could mean two things. */
    public static Optional<SourceNumber> parse(String text) {
        String stripped = Blanks.strip(text);
        Matcher fraction = FRACTION.matcher(stripped);
        if (fraction.matches() && !fraction.group(3).matches("0+")) {
            double whole = fraction.group(1) == null ? 0 : Double.parseDouble(fraction.group(1));
            double part = Double.parseDouble(fraction.group(2)) / Double.parseDouble(fraction.group(3));
            return withUnit(whole + part, fraction.group(4));
        }
        Matcher decimal = DECIMAL.matcher(stripped);
        if (!decimal.matches() || AMBIGUOUS.matcher(stripped).matches()) {
            return Optional.empty();
        }
        double number = Double.parseDouble(decimal.group(1).replace(',', '.'));
        return Double.isFinite(number) ? withUnit(number, decimal.group(2)) : Optional.empty();
    }

    private static Optional<SourceNumber> withUnit(double number, @org.jspecify.annotations.Nullable String word) {
        if (word == null || word.isBlank()) {
            return Optional.of(new SourceNumber(number, Optional.empty()));
        }
        return findUnit(word.strip()).map(unit -> new SourceNumber(number, Optional.of(unit)));
    }

    private static Optional<Unit> findUnit(String word) {
        return switch (word.toLowerCase(java.util.Locale.ROOT)) {
            case "\"", "''", "\u2033", "\u201D", "inch", "inches", "in." -> Optional.of(Unit.IN);
            case "'", "\u2032", "\u2019", "feet", "foot", "ft." -> Optional.of(Unit.FT);
            default -> Unit.findBySymbol(word);
        };
    }

    /**
     * Returns a value as text; numbers in their shortest form, so that 4, 4.0 and 4.000 are "4" whichever format they come from.
     */
    public static String text(Object value) {
        if (value instanceof Double number) {
            return canonical(number);
        }
        return Blanks.strip(value.toString());
    }

    /** Returns a number for a message: as {@link #canonical}, and with an exponent where that would be a long row of zeros. */
    public static String brief(double number) {
        double size = Math.abs(number);
        return size != 0 && (size < 1e-6 || size >= 1e15) ? Double.toString(number) : canonical(number);
    }

    public static String canonical(double number) {
        if (number == Math.rint(number) && Math.abs(number) < 1e15) {
            return Long.toString((long) number);
        }
        return Double.isFinite(number)
                ? BigDecimal.valueOf(number).stripTrailingZeros().toPlainString()
                : Double.toString(number);
    }
}
