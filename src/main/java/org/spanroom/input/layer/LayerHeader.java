package org.spanroom.input.layer;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What a layer says of itself before its features are read.
 *
 * @param layerName the layer's name in its file, or the file's name without its ending
 * @param fields names of the attribute fields, in file order; for GeoJSON those met in the first features
 * @param crsDefinition the reference system as the file states it: "EPSG:code", "OGC:CRS84" or WKT; empty if it does not
 * @param featureCount how many features the file announces, or -1 where it does not; not to be trusted
 */
public record LayerHeader(
        Path file, String layerName, List<String> fields, Optional<String> crsDefinition, long featureCount) {
    public LayerHeader {
        fields = List.copyOf(fields);
    }

    public LayerHeader withCrs(Optional<String> other) {
        return new LayerHeader(file, layerName, fields, other, featureCount);
    }

    public LayerHeader withFields(List<String> others) {
        return new LayerHeader(file, layerName, others, crsDefinition, featureCount);
    }

    /** Returns the words that findings use for this layer: its file's name, and its own where that says more. */
    public String source() {
        String fileName = String.valueOf(file.getFileName());
        return LayerFormat.stem(file).equals(layerName) ? fileName : fileName + " (" + layerName + ")";
    }
}
