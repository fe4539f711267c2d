package org.spanroom.crs;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Takes the horizontal part out of a WKT 1 text that has heights too.
 *
 * <p>Programs write heights in three ways: as a compound system, as a vertical system after the horizontal one (.prj files:
 * "PROJCS[...],VERTCS[...]"), or as a unit of length within a geographic system of three dimensions ("LINUNIT"). The parser knows the
 * first only, and that not with every vertical part.
 */
final class HorizontalText {
    private static final Pattern SYSTEM = Pattern.compile("(PROJCS|GEOGCS)\\s*[\\[(]", Pattern.CASE_INSENSITIVE);

    private static final Pattern HEIGHT_UNIT = Pattern.compile(
            ",\\s*LINUNIT\\s*[\\[(]\\s*\"[^\"]*\"\\s*,[^\\[\\]()\"]*(?:,\\s*AUTHORITY\\s*[\\[(][^\\])]*[\\])]\\s*)?[\\])]",
            Pattern.CASE_INSENSITIVE);

    private HorizontalText() {}

    /** Returns the text of the first horizontal system, or the whole text where none is found or its brackets do not close. */
    static String of(String wkt) {
        Matcher system = SYSTEM.matcher(wkt);
        if (!system.find()) {
            return wkt;
        }
        int end = endOfBrackets(wkt, system.end() - 1);
        return end < 0
                ? wkt
                : HEIGHT_UNIT.matcher(wkt.substring(system.start(), end)).replaceAll("");
    }

    /** Returns the place after the bracket that closes the one at the given place, or -1; brackets within quotes do not count. */
    private static int endOfBrackets(String text, int from) {
        int depth = 0;
        boolean quoted = false;
        for (int at = from; at < text.length(); at++) {
            char c = text.charAt(at);
            quoted ^= c == '"';
            if (!quoted) {
                depth += c == '[' || c == '(' ? 1 : c == ']' || c == ')' ? -1 : 0;
                if (depth == 0) {
                    return at + 1;
                }
            }
        }
        return -1;
    }
}
