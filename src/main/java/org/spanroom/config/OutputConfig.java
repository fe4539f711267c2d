package org.spanroom.config;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.OutputFormat;

/**
 * Where and how the results are written.
 *
 * @param folder the folder of this run; relative to the directory that the program is started in, as on the command line
 * @param crs the reference system of the layers; that of the routes where none is given
 * @param formats the formats that the results are written in; the record of the run comes with any of them
 * @param columns the groups of columns and tables that are written in addition to the core columns
 * @param packingFile a file outside that folder which carries packings of cross-sections to the next run, relative to the same directory; none
 *     where none is given
 */
public record OutputConfig(
        Optional<Path> folder,
        Optional<String> crs,
        List<OutputFormat> formats,
        List<ColumnGroup> columns,
        Optional<Path> packingFile) {
    public OutputConfig {
        if (formats.isEmpty()) {
            throw new IllegalArgumentException("formats must name at least one format");
        }
        formats = List.copyOf(formats);
        columns = List.copyOf(columns);
    }

    /** Returns the folder of results; {@code output/run} where none is given. */
    public Path resultsFolder() {
        return folder.orElse(Path.of("output", "run"));
    }

    public OutputConfig withFormats(List<OutputFormat> otherFormats) {
        return new OutputConfig(folder, crs, otherFormats, columns, packingFile);
    }

    public OutputConfig withColumns(List<ColumnGroup> otherColumns) {
        return new OutputConfig(folder, crs, formats, otherColumns, packingFile);
    }

    public OutputConfig withFolder(Path otherFolder) {
        return new OutputConfig(Optional.of(otherFolder), crs, formats, columns, packingFile);
    }

    OutputConfig withoutFolder() {
        return new OutputConfig(Optional.empty(), crs, formats, columns, packingFile);
    }

    public OutputConfig withCrs(String otherCrs) {
        return new OutputConfig(folder, Optional.of(otherCrs), formats, columns, packingFile);
    }
}
