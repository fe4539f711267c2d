package org.spanroom.output;

import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Set;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.OutputFormat;
import org.spanroom.model.UnitSystem;

/**
 * Where and how results are written.
 *
 * @param folder made for the run
 * @param overwrite whether results of an earlier run in that folder may be replaced
 * @param crs reference system of the GeoPackage and the Shapefile
 * @param formats the formats to write
 * @param groups the groups of columns and tables to write in addition to the core columns
 * @param units with US units, columns have twins in them
 * @param threads how many threads may calculate rows at the same time, 1 or more
 */
public record OutputSettings(
        Path folder,
        boolean overwrite,
        ReferenceSystem crs,
        Set<OutputFormat> formats,
        Set<ColumnGroup> groups,
        UnitSystem units,
        int threads) {
    public OutputSettings {
        formats = Set.copyOf(formats);
        groups = Set.copyOf(groups);
        if (threads < 1) {
            throw new IllegalArgumentException("threads must be >= 1, was " + threads);
        }
    }

    /** Settings for every format and every column. */
    public OutputSettings(Path folder, boolean overwrite, ReferenceSystem crs, int threads) {
        this(folder, overwrite, crs, EnumSet.allOf(OutputFormat.class), ColumnGroup.all(), UnitSystem.METRIC, threads);
    }
}
