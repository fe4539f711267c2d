package org.spanroom.model.network;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * What two spellings of one id have in common. Systems that export a layer change ids on the way: braces and capital letters of a GUID,
 * leading zeros, a number that became a decimal one.
 */
public final class IdKey {
    private static final Pattern GUID = Pattern.compile("\\{?[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}}?");
    private static final Pattern DECIMAL = Pattern.compile("([0-9]+)\\.0+");
    private static final Pattern LEADING_ZEROS = Pattern.compile("0+(?=[0-9]+$)");

    private IdKey() {}

    /** Returns a text that is the same for all spellings of an id. */
    public static String of(String id) {
        String text = id.strip().toLowerCase(Locale.ROOT);
        if (GUID.matcher(text).matches()) {
            return text.replace("{", "").replace("}", "");
        }
        var decimal = DECIMAL.matcher(text);
        String whole = decimal.matches() ? decimal.group(1) : text;
        return LEADING_ZEROS.matcher(whole).lookingAt()
                ? LEADING_ZEROS.matcher(whole).replaceFirst("")
                : whole;
    }
}
