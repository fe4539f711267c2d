package org.spanroom.output;

import java.nio.file.Path;
import java.util.List;
import org.spanroom.model.rank.SpanMove;
import org.spanroom.output.columns.MoveColumns;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.output.geopackage.GeoPackageWriter;
import org.spanroom.output.table.Extent;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.text.CsvWriter;

/** Writes what a comparison of two runs found, as a layer and as CSV, into a folder of its own. */
public final class ComparisonWriter {
    private static final String MARKER = "moves.csv";
    private static final String GEOPACKAGE = "moves.gpkg";

    private ComparisonWriter() {}

    /** Checks, before the work, that the results may be written. */
    public static void check(Path folder, boolean overwrite) {
        OutputFolder.check(folder, overwrite, MARKER);
    }

    /**
     * Writes the moves.
     *
     * @throws OutputException if the folder exists and may not be replaced, or cannot be written
     */
    public static List<Path> write(List<SpanMove> moves, Path folder, boolean overwrite, LayerOptions options) {
        try (var output = OutputFolder.create(folder, overwrite, MARKER)) {
            Path geoPackage = output.path().resolve(GEOPACKAGE);
            Extent extent;
            try (var file = new GeoPackageWriter(geoPackage, options)) {
                try (var layer = file.layer(MoveColumns.TABLE)) {
                    moves.forEach(layer::write);
                }
                extent = file.extent();
            }
            ProjectFile.write(geoPackage, List.of(MoveColumns.TABLE), extent, options);
            try (var file = new CsvWriter<>(output.path().resolve(MARKER), MoveColumns.TABLE)) {
                moves.forEach(file::write);
            }
            output.commit();
            return List.of(
                    folder.resolve(GEOPACKAGE), folder.resolve(ProjectFile.name(GEOPACKAGE)), folder.resolve(MARKER));
        }
    }
}
