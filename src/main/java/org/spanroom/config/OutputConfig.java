package org.spanroom.config;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Where and how the results are written.
 *
 * @param folder the folder of this run; relative to the directory that the program is started in
 * @param crs the reference system of the layers; that of the routes where none is given
 * @param packingFile a file outside that folder which carries packings of cross-sections to the next run; none where none is
 *     given
 */
public record OutputConfig(Optional<Path> folder, Optional<String> crs, Optional<Path> packingFile) {
    public static OutputConfig defaults() {
        return new OutputConfig(Optional.empty(), Optional.empty(), Optional.empty());
    }

    public OutputConfig withFolder(Path otherFolder) {
        return new OutputConfig(Optional.of(otherFolder), crs, packingFile);
    }

    public OutputConfig withCrs(String otherCrs) {
        return new OutputConfig(folder, Optional.of(otherCrs), packingFile);
    }
}
