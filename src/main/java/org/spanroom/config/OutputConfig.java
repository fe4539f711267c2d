package org.spanroom.config;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.OutputFormat;

/**
 * Where and how the results are written.
 *
 * @param folder the folder of this run; relative to the directory that the program is started in, as on the command line
 * @param crs the reference system of the layers; that of the routes where none is given
 * @param formats the formats that the results are written in; the record of the run comes with any of them
 * @param packingFile a file outside that folder which carries packings of cross-sections to the next run, relative to the same directory; none
 *     where none is given
 */
public record OutputConfig(
        Optional<Path> folder, Optional<String> crs, List<OutputFormat> formats, Optional<Path> packingFile) {
    public OutputConfig {
        if (formats.isEmpty()) {
            throw new IllegalArgumentException("formats must name at least one format");
        }
        formats = List.copyOf(formats);
    }

    /** Returns the folder of results; {@code output/run} where none is given. */
    public Path resultsFolder() {
        return folder.orElse(Path.of("output", "run"));
    }

    public OutputConfig withFormats(List<OutputFormat> otherFormats) {
        return new OutputConfig(folder, crs, otherFormats, packingFile);
    }

    public OutputConfig withFolder(Path otherFolder) {
        return new OutputConfig(Optional.of(otherFolder), crs, formats, packingFile);
    }

    OutputConfig withoutFolder() {
        return new OutputConfig(Optional.empty(), crs, formats, packingFile);
    }

    public OutputConfig withCrs(String otherCrs) {
        return new OutputConfig(folder, Optional.of(otherCrs), formats, packingFile);
    }
}
