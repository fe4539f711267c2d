package org.spanroom.model;

import java.util.List;
import java.util.Locale;

/** The file formats that results are written in. The lower-case name is the word for it in the config; its file's extension counts too. */
public enum OutputFormat implements Worded {
    GEOPACKAGE("gpkg"),
    CSV("csv"),
    GEOJSON("json"),
    SHAPEFILE("shp");

    private final String extension;

    OutputFormat(String extension) {
        this.extension = extension;
    }

    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    @Override
    public List<String> words() {
        return extension.equals(key()) ? List.of(key()) : List.of(key(), extension);
    }
}
