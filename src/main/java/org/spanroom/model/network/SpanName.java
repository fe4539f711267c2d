package org.spanroom.model.network;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The name of a span in its parts: {@code duct:vault_a:vault_b}, and a number from 2 where a duct runs between the same two vaults more
 * than once, {@code duct:vault_a:vault_b:2}. A {@code :} or {@code %} inside a part is written as in a URL, {@code %3A} or {@code %25},
 * so that a name can be split again.
 *
 * @param number 1 for the first span of that duct between these vaults
 */
public record SpanName(String ductId, String vaultA, String vaultB, int number) {
    /** What follows a part of a name, and no escaped part has. */
    public static final char AFTER_PART = ':';

    static final String SEPARATOR = String.valueOf(AFTER_PART);
    private static final int ENDS = 3;

    /** Returns the name of the first span of a duct between two vaults. */
    public static String first(String ductId, String vaultA, String vaultB) {
        return String.join(SEPARATOR, escaped(ductId), escaped(vaultA), escaped(vaultB));
    }

    /** Returns the name of a further span of the same duct between the same vaults. */
    public static String numbered(String first, int number) {
        return first + SEPARATOR + number;
    }

    /** Splits a name; empty where the text is none. */
    public static Optional<SpanName> parse(String text) {
        List<String> parts =
                Arrays.stream(text.split(SEPARATOR, -1)).map(SpanName::plain).toList();
        boolean numbered = parts.size() == ENDS + 1 && parts.get(ENDS).matches("[1-9]\\d{0,8}");
        if (parts.size() != ENDS && !numbered) {
            return Optional.empty();
        }
        int number = numbered ? Integer.parseInt(parts.get(ENDS)) : 1;
        return Optional.of(new SpanName(parts.get(0), parts.get(1), parts.get(2), number));
    }

    /** Returns a number of the order of names, from the duct that they begin with: see {@link IdOrder#leadingOfId}. */
    public static long leading(String ductId) {
        return LeadingText.of(escaped(ductId) + AFTER_PART);
    }

    /** Returns whether the name has a number, which spans of the whole network give it. */
    public boolean isNumbered() {
        return number > 1;
    }

    /** Returns a part as names have it. */
    public static String escaped(String part) {
        return part.indexOf('%') < 0 && part.indexOf(AFTER_PART) < 0
                ? part
                : part.replace("%", "%25").replace(SEPARATOR, "%3A");
    }

    private static String plain(String part) {
        return part.replace("%3A", SEPARATOR).replace("%25", "%");
    }

    @Override
    public String toString() {
        String first = first(ductId, vaultA, vaultB);
        return number == 1 ? first : numbered(first, number);
    }
}
