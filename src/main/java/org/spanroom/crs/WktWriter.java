package org.spanroom.crs;

import java.util.OptionalInt;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.referencing.wkt.Formattable;

/**
 * Writes WKT 1 on one line.
 *
 * <p>Axes are left out: without them WKT 1 means easting or longitude first, which is what we write in files.
 */
final class WktWriter {
    private WktWriter() {}

    static String ogc(CoordinateReferenceSystem plane, OptionalInt code) {
        if (code.equals(OptionalInt.of(KnownSystems.WEB_MERCATOR_CODE))) {
            return KnownSystems.WEB_MERCATOR_WKT;
        }
        String text = ((Formattable) plane)
                .toWKT(0, false)
                .replaceAll(",\\s*AXIS\\[\"[^\"]*\",\\s*(?:\"[^\"]*\"|[A-Z_]+)\\]", "")
                .replaceAll(",\\s+", ",")
                .replace("PROJECTION[\"Polar Stereographic (variant B)\"", "PROJECTION[\"Polar_Stereographic\"")
                .replace("PROJECTION[\"Oblique_Mercator\"", "PROJECTION[\"Hotine_Oblique_Mercator_Azimuth_Center\"")
                .replace("UNIT[\"m\",", "UNIT[\"metre\",")
                .replace("UNIT[\"ft\",", "UNIT[\"foot\",")
                .replace("UNIT[\"ft_survey_us\",", "UNIT[\"US survey foot\",");
        if (text.contains("PROJECTION[\"Polar_Stereographic\"")) {
            text = text.replace("PARAMETER[\"Standard_Parallel_1\"", "PARAMETER[\"latitude_of_origin\"");
        }
        return code.isPresent() ? text.replaceAll(",TOWGS84\\[[^\\]]*\\]", "") : text;
    }

    /** Rounds off what unit conversions leave in the last digits. */
    static double tidy(double value) {
        double rounded = Math.rint(value * 1e7) / 1e7;
        return Math.abs(rounded - value) < 1e-12 * Math.max(1, Math.abs(value)) ? rounded : value;
    }
}
