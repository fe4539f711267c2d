package org.spanroom.crs;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Recognizes how a reference system is written, and hands the text to the reader of that form. */
final class DefinitionParser {
    private static final int LONGEST_DEFINITION = 100_000;

    private static final Pattern CRS84 = Pattern.compile(
            "(?:(?:OGC:)?CRS:?84H?|URN:(?:X-)?OGC:DEF:CRS:OGC:[0-9.]*:CRS84H?"
                    + "|HTTPS?://WWW\\.OPENGIS\\.NET/DEF/CRS/OGC/(?:1\\.3|0)/CRS84H?)",
            Pattern.CASE_INSENSITIVE);

    private static final Pattern CODE = Pattern.compile(
            "(?:EPSG::?|URN:(?:X-)?OGC:DEF:CRS:EPSG:[0-9.]*:|HTTPS?://WWW\\.OPENGIS\\.NET/DEF/CRS/EPSG/[0-9.]+/)?(\\d{4,6})",
            Pattern.CASE_INSENSITIVE);

    private static final Pattern WKT1 = Pattern.compile("(PROJCS|GEOGCS|COMPD_CS)\\s*[\\[(]", Pattern.CASE_INSENSITIVE);

    private static final Pattern OTHER_WKT =
            Pattern.compile("(?:[A-Z]+CRS|GEOCCS|LOCAL_CS|VERT_CS|FITTED_CS)\\s*[\\[(]", Pattern.CASE_INSENSITIVE);

    /** The identifier of the whole system comes last in it; those of its parts are further inside. */
    private static final Pattern LAST_IDENTIFIER = Pattern.compile(
            "(?:AUTHORITY|ID)\\s*\\[\\s*\"EPSG\"\\s*,\\s*\"?(\\d{4,6})\"?\\s*\\]\\s*\\]\\s*$",
            Pattern.CASE_INSENSITIVE);

    private DefinitionParser() {}

    static ReferenceSystem parse(String definition) {
        String text = definition.strip().replace("\uFEFF", "");
        if (text.isEmpty()) {
            throw new IllegalArgumentException("the definition of the reference system is empty");
        }
        if (text.length() > LONGEST_DEFINITION) {
            throw new IllegalArgumentException(
                    "the definition of the reference system is longer than 100000 characters");
        }
        Matcher code = CODE.matcher(text);
        if (CRS84.matcher(text).matches()) {
            return KnownSystems.CRS84;
        }
        if (code.matches()) {
            return ofCode(Integer.parseInt(code.group(1)));
        }
        return ofWkt(text);
    }

    private static ReferenceSystem ofCode(int code) {
        return code == KnownSystems.WGS84_CODE ? KnownSystems.WGS84 : EpsgDataset.findByCode(code);
    }

    private static ReferenceSystem ofWkt(String text) {
        if (WKT1.matcher(text).lookingAt()) {
            return ofWkt1(text);
        }
        if (OTHER_WKT.matcher(text).lookingAt()) {
            Optional<Integer> code = code(text);
            if (code.isPresent() && !text.toUpperCase(Locale.ROOT).startsWith("VERT")) {
                return ofCode(code.get());
            }
            throw new IllegalArgumentException("this kind of WKT is not supported: " + abridged(text));
        }
        throw new IllegalArgumentException(
                "'" + abridged(text) + "' is not a reference system: expected EPSG:code, OGC:CRS84 or WKT 1");
    }

    /** The code of the horizontal part counts, else that of the compound of it and heights. */
    private static ReferenceSystem ofWkt1(String text) {
        String horizontal = HorizontalText.of(text);
        boolean compound = text.regionMatches(true, 0, "COMPD_CS", 0, 8);
        return code(horizontal)
                .or(() -> compound ? code(text) : Optional.empty())
                .map(code -> WktReader.read(horizontal, code))
                .orElseGet(() -> WktReader.read(horizontal));
    }

    private static Optional<Integer> code(String text) {
        Matcher identifier = LAST_IDENTIFIER.matcher(text);
        return identifier.find() ? Optional.of(Integer.valueOf(identifier.group(1))) : Optional.empty();
    }

    /** Returns what a library says of a failure, behind our own words and without its full stop. */
    static String inParentheses(String said) {
        return " (" + abridged(said.strip()).replaceAll("(?<!\\.)\\.$", "") + ")";
    }

    static String abridged(String text) {
        String line = text.replaceAll("\\s+", " ");
        return line.length() <= 60 ? line : line.substring(0, 57) + "...";
    }
}
