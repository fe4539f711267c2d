package org.spanroom.output.table;

import java.time.Instant;
import org.spanroom.crs.ReferenceSystem;

/**
 * What layers of any table are written with.
 *
 * @param crs the reference system of Shapefiles and GeoPackages; GeoJSON is always longitude and latitude on WGS 84
 * @param writtenAt the time that formats note as the last change; given, so that the same input gives the same bytes
 */
public record LayerOptions(ReferenceSystem crs, Instant writtenAt) {
    /** Returns longitude and latitude on WGS 84. */
    public static LayerOptions lonLat(Instant writtenAt) {
        return new LayerOptions(ReferenceSystem.crs84(), writtenAt);
    }

    public OutputCrs frame() {
        return OutputCrs.of(crs);
    }
}
