package org.spanroom.input;

import java.util.Arrays;
import java.util.Locale;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;

/** What the readers of both layers ask of geometries. */
final class Geometries {
    private Geometries() {}

    static boolean isFinite(double[] ordinates) {
        return Arrays.stream(ordinates).allMatch(Double::isFinite);
    }

    /** Tells why a feature's geometry cannot be used in a layer of the wanted kind. */
    static void reject(SourceFeature feature, String wanted, CappedLog log) {
        boolean none = feature.geometry().kind() == SourceGeometry.Kind.NONE;
        String detail = none
                ? "the feature has no geometry"
                : "the feature is a " + feature.geometryType().toLowerCase(Locale.ROOT) + ", the layer is read for "
                        + wanted;
        log.add(Finding.of(
                none ? FindingCode.EMPTY_GEOMETRY : FindingCode.WRONG_GEOMETRY_TYPE,
                log.source(),
                Long.toString(feature.number()),
                detail));
    }
}
