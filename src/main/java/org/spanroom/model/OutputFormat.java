package org.spanroom.model;

import java.util.Locale;

/** The file formats that results are written in. The lower-case name is the word for it in the config. */
public enum OutputFormat {
    GEOPACKAGE,
    CSV,
    GEOJSON,
    SHAPEFILE;

    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
