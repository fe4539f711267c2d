package org.spanroom.output;

import java.nio.file.Path;
import org.spanroom.crs.ReferenceSystem;

/**
 * Where and how results are written.
 *
 * @param folder made for the run
 * @param overwrite whether results of an earlier run in that folder may be replaced
 * @param crs reference system of the GeoPackage and the Shapefile
 * @param threads how many files may be written at the same time, 1 or more
 */
public record OutputSettings(Path folder, boolean overwrite, ReferenceSystem crs, int threads) {
    public OutputSettings {
        if (threads < 1) {
            throw new IllegalArgumentException("threads must be >= 1, was " + threads);
        }
    }
}
