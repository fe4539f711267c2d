package org.spanroom.output.shapefile;

import java.nio.file.Path;
import org.spanroom.output.folder.OutputException;

/** A layer that is larger than its file format can hold; other formats may hold it. */
final class FormatLimitException extends OutputException {
    private static final long serialVersionUID = 1;

    FormatLimitException(Path file, String problem) {
        super(file, problem, "Use the GeoPackage or the GeoJSON file instead.");
    }
}
