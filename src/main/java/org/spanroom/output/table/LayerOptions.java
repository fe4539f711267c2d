package org.spanroom.output.table;

import java.time.Instant;
import java.util.Optional;
import org.spanroom.crs.ReferenceSystem;

/**
 * What layers of any table are written with.
 *
 * @param crs the reference system of Shapefiles and GeoPackages; GeoJSON is always longitude and latitude on WGS 84
 * @param writtenAt the time that formats note as the last change; given, so that the same input gives the same bytes
 * @param about what a GeoPackage says of where its contents are from, as JSON; with it the file also explains its columns and has the
 *     styles of its layers. Empty for files that are to look like an owner's own
 */
public record LayerOptions(ReferenceSystem crs, Instant writtenAt, Optional<String> about) {
    /** Options of files that say nothing about themselves. */
    public LayerOptions(ReferenceSystem crs, Instant writtenAt) {
        this(crs, writtenAt, Optional.empty());
    }

    /** Returns longitude and latitude on WGS 84. */
    public static LayerOptions lonLat(Instant writtenAt) {
        return new LayerOptions(ReferenceSystem.crs84(), writtenAt);
    }

    /** Returns the same options for a GeoPackage that explains itself. */
    public LayerOptions about(String json) {
        return new LayerOptions(crs, writtenAt, Optional.of(json));
    }

    public OutputCrs frame() {
        return OutputCrs.of(crs);
    }
}
