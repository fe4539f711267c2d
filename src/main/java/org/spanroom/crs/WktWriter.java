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
                .replace("UNIT[\"m\",", "UNIT[\"metre\",")
                .replace("UNIT[\"ft\",", "UNIT[\"foot\",")
                .replace("UNIT[\"ft_survey_us\",", "UNIT[\"US survey foot\",");
        return code.isPresent() ? text.replaceAll(",TOWGS84\\[[^\\]]*\\]", "") : text;
    }

    static String esri(CoordinateReferenceSystem plane) {
        return ogc(plane, OptionalInt.empty()).replaceAll(",AUTHORITY\\[[^\\]]*\\]", "");
    }
}
