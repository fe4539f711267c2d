package org.spanroom.config;

/**
 * Which of a layer's two ordinates comes first in its file. GeoJSON (RFC 7946, section 3.1.1), Shapefiles and GeoPackages (well-known
 * binary) all have easting or longitude first, whatever the order of the reference system; some exports do otherwise.
 */
public enum AxisOrder {
    /** Easting or longitude, as the formats say. */
    EAST_FIRST,
    /** Northing or latitude: a file that was written wrong, and is read so that it comes right. */
    NORTH_FIRST
}
