package org.spanroom.input;

import java.util.Arrays;
import java.util.Locale;
import java.util.regex.Pattern;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry;

/** What the readers of both layers ask of geometries. */
final class Geometries {
    private static final Pattern CURVED =
            Pattern.compile("CircularString|CompoundCurve|CurvePolygon|MultiCurve|MultiSurface|Curve|Surface");

    private static final double STEPS_PER_DEG = 1e9;

    private Geometries() {}

    static boolean isFinite(double[] ordinates) {
        return Arrays.stream(ordinates).allMatch(Double::isFinite);
    }

    /**
     * Rounds longitudes and latitudes to nine decimals, a tenth of a millimeter: where one file has them all and another only these,
     * both are the same place to the last bit, and nothing that follows can differ.
     */
    static void roundDegrees(double[] ordinates, int dimension) {
        for (int at = 0; at < ordinates.length; at += dimension) {
            ordinates[at] = nineDecimals(ordinates[at]);
            ordinates[at + 1] = nineDecimals(ordinates[at + 1]);
        }
    }

    private static double nineDecimals(double deg) {
        return Math.rint(deg * STEPS_PER_DEG) / STEPS_PER_DEG + 0.0; // no negative zero
    }

    /** Reports why a feature's geometry cannot be used in a layer of the wanted kind, and returns the kind of fault. */
    static FindingCode reject(SourceFeature feature, String wanted, CappedLog log) {
        boolean none = feature.geometry().kind() == SourceGeometry.Kind.NONE;
        FindingCode code = none ? FindingCode.EMPTY_GEOMETRY : FindingCode.WRONG_GEOMETRY_TYPE;
        String detail = none ? "the feature has no geometry" : wrongType(feature, wanted);
        log.add(Finding.of(code, log.source(), Long.toString(feature.number()), detail));
        return code;
    }

    private static String wrongType(SourceFeature feature, String wanted) {
        String type = feature.geometryType();
        String found = "the feature's geometry is of type " + type.toLowerCase(Locale.ROOT) + ", but this layer needs "
                + wanted;
        if (CURVED.matcher(type).lookingAt()) {
            return found + "; export it with its curves converted to straight segments";
        }
        return feature.geometry().kind() == SourceGeometry.Kind.OTHER && type.startsWith("GeometryCollection")
                ? found + ", and the collection mixes kinds or has other ones"
                : found;
    }
}
