package org.spanroom.crs;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.referencing.CRS;

/** Reads WKT 1. Where the text names its EPSG code, the dataset's definition counts, since it also knows the datum shift. */
final class WktReader {
    private static final double SAME_UNIT_RATIO = 1e-6;
    private static final int DEEPEST = 30;

    private static final Pattern AXIS =
            Pattern.compile(",\\s*AXIS\\s*[\\[(]\\s*\"[^\"]*\"\\s*,\\s*[A-Z_]+\\s*[\\])]", Pattern.CASE_INSENSITIVE);

    private static final Pattern PLACEHOLDER = Pattern.compile("\\{\\d\\}");

    private WktReader() {}

    static ReferenceSystem read(String text, int code) {
        CoordinateReferenceSystem written = Transforms.horizontal(parse(text));
        ReferenceSystem known;
        try {
            known = code == KnownSystems.WGS84_CODE ? KnownSystems.WGS84 : EpsgDataset.findByCode(code);
        } catch (IllegalArgumentException e) {
            return read(text);
        }
        return sameUnit(known.unitLengthM(), Transforms.unitLengthM(written)) ? known : read(text);
    }

    static ReferenceSystem read(String text) {
        if (isSphericalMercator(text)) {
            return EpsgDataset.findByCode(KnownSystems.WEB_MERCATOR_CODE);
        }
        CoordinateReferenceSystem written = Transforms.horizontal(parse(text));
        if (written instanceof GeographicCRS geographic && Datums.isWgs84Degrees(geographic)) {
            return KnownSystems.WGS84;
        }
        Optional<String> prjText = looksEsri(text) ? Optional.of(text.replaceAll("\\s*\\R\\s*", "")) : Optional.empty();
        return Transforms.systemOf(written, OptionalInt.empty(), prjText);
    }

    /**
     * Axes are taken out first: files hold easting or longitude first whatever the text says, and that is what WKT 1 without axes
     * means.
     */
    static CoordinateReferenceSystem parse(String text) {
        Quiet.install();
        EpsgDataset.awaitOpening();
        demandShallow(text);
        try {
            return CRS.parseWKT(AXIS.matcher(text).replaceAll(""));
        } catch (FactoryException | RuntimeException e) {
            throw new IllegalArgumentException(
                    "the definition in WKT is not usable" + DefinitionParser.inParentheses(reason(e)), e);
        }
    }

    /** The parser leaves a placeholder where it misses a character at the end, and some of its failures say nothing. */
    private static String reason(Exception failure) {
        String said = failure.getMessage();
        return said == null || PLACEHOLDER.matcher(said).find()
                ? "it ends early, or a bracket, quote or comma is missing"
                : said;
    }

    /** The parser calls itself for each level; real systems have six or so. */
    private static void demandShallow(String text) {
        int depth = 0;
        for (int at = 0; at < text.length(); at++) {
            char c = text.charAt(at);
            depth += c == '[' || c == '(' ? 1 : c == ']' || c == ')' ? -1 : 0;
            if (depth > DEEPEST) {
                throw new IllegalArgumentException("the WKT is nested more than " + DEEPEST + " deep");
            }
        }
    }

    /** WKT 1 has no word for Web Mercator: it hides in an extension of the ellipsoidal Mercator, or under ESRI's name. */
    private static boolean isSphericalMercator(String text) {
        String upper = text.toUpperCase(Locale.ROOT);
        return (upper.contains("+PROJ=MERC") && upper.contains("+B=6378137 ") && upper.contains("+LON_0=0 "))
                || upper.contains("\"WGS_1984_WEB_MERCATOR_AUXILIARY_SPHERE\"");
    }

    private static boolean looksEsri(String text) {
        return text.contains("DATUM[\"D_") && !text.contains("AUTHORITY") && !text.startsWith("COMPD_CS");
    }

    private static boolean sameUnit(OptionalDouble one, OptionalDouble other) {
        return one.isPresent() == other.isPresent() && Math.abs(one.orElse(1) / other.orElse(1) - 1) < SAME_UNIT_RATIO;
    }
}
