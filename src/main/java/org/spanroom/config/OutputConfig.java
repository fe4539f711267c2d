package org.spanroom.config;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Where and how the results are written.
 *
 * @param folder the folder of this run; relative to the directory that the program is started in
 * @param crs the reference system of the layers; that of the routes where none is given
 * @param layers the layers of the GeoPackage
 */
public record OutputConfig(Optional<Path> folder, Optional<String> crs, List<OutputLayer> layers) {
    public OutputConfig {
        layers = List.copyOf(layers);
    }

    public static OutputConfig defaults() {
        return new OutputConfig(Optional.empty(), Optional.empty(), List.of(OutputLayer.values()));
    }

    public OutputConfig withFolder(Path otherFolder) {
        return new OutputConfig(Optional.of(otherFolder), crs, layers);
    }

    public OutputConfig withCrs(String otherCrs) {
        return new OutputConfig(folder, Optional.of(otherCrs), layers);
    }
}
