package org.spanroom.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.Way;
import org.spanroom.model.program.WayStep;
import org.spanroom.output.columns.PathColumns;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.output.geopackage.GeoPackageWriter;
import org.spanroom.output.table.Extent;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.Table;
import org.spanroom.output.text.CsvWriter;

/** Writes what the commands for ways through the network find, as layers and as CSV, each into a folder of its own. */
public final class ProgramWriter {
    /** The tables by which folders of the commands are known: one without it is not replaced. */
    public static final String PATHS = PathColumns.PATHS.name() + ".csv";

    private ProgramWriter() {}

    /**
     * Checks, before the work, that the results may be written.
     *
     * @param marker the file by which a folder of the command is known
     */
    public static void check(Path folder, boolean overwrite, String marker) {
        OutputFolder.check(folder, overwrite, marker);
    }

    /** A table and its rows. */
    public record Rows<R>(Table<R> table, List<R> rows) {
        public Rows {
            rows = List.copyOf(rows);
        }
    }

    /**
     * Writes ways.
     *
     * @throws OutputException if the folder exists and may not be replaced, or cannot be written
     */
    public static List<Path> writePaths(
            DuctNetwork network, List<Way> ways, Path folder, boolean overwrite, LayerOptions options) {
        var paths = new ArrayList<PathColumns.WayRow>();
        var sections = new ArrayList<PathColumns.StepRow>();
        for (Way way : ways) {
            int number = paths.size() + 1;
            paths.add(new PathColumns.WayRow(number, way, network));
            int binding = way.steps().indexOf(way.binding());
            for (int place = 0; place < way.steps().size(); place++) {
                WayStep step = way.steps().get(place);
                sections.add(new PathColumns.StepRow(number, place + 1, step, place == binding, network));
            }
        }
        return write(
                "path.gpkg",
                List.of(new Rows<>(PathColumns.PATHS, paths), new Rows<>(PathColumns.SECTIONS, sections)),
                folder,
                overwrite,
                options);
    }

    /**
     * Writes tables into one GeoPackage and as CSV; by the CSV of the first the folder is known.
     *
     * @throws OutputException if the folder exists and may not be replaced, or cannot be written
     */
    public static List<Path> write(
            String geoPackage, List<Rows<?>> tables, Path folder, boolean overwrite, LayerOptions options) {
        return write(geoPackage, tables, Map.of(), folder, overwrite, options);
    }

    /**
     * Writes tables the same way, and texts as files of their own.
     *
     * @param texts by name of the file
     */
    static List<Path> write(
            String geoPackage,
            List<Rows<?>> tables,
            Map<String, String> texts,
            Path folder,
            boolean overwrite,
            LayerOptions options) {
        try (var output =
                OutputFolder.create(folder, overwrite, tables.get(0).table().name() + ".csv")) {
            var files = new ArrayList<Path>();
            Extent extent;
            try (var file = new GeoPackageWriter(output.path().resolve(geoPackage), options)) {
                for (Rows<?> rows : tables) {
                    writeLayer(file, rows);
                }
                extent = file.extent();
            }
            writeProject(output.path().resolve(geoPackage), tables, extent, options);
            files.add(folder.resolve(geoPackage));
            files.add(folder.resolve(ProjectFile.name(geoPackage)));
            for (Rows<?> rows : tables) {
                String name = rows.table().name() + ".csv";
                writeCsv(output.path().resolve(name), rows);
                files.add(folder.resolve(name));
            }
            for (var text : texts.entrySet()) {
                Path file = output.path().resolve(text.getKey());
                try {
                    Files.writeString(file, text.getValue());
                } catch (IOException failure) {
                    throw OutputException.of(file, failure);
                }
                files.add(folder.resolve(text.getKey()));
            }
            output.commit();
            return files;
        }
    }

    private static void writeProject(Path geoPackage, List<Rows<?>> tables, Extent extent, LayerOptions options) {
        List<Table<?>> layers = new ArrayList<>();
        tables.forEach(rows -> layers.add(rows.table()));
        ProjectFile.write(geoPackage, layers, extent, options);
    }

    private static <R> void writeLayer(GeoPackageWriter file, Rows<R> rows) {
        try (var layer = file.layer(rows.table())) {
            rows.rows().forEach(layer::write);
        }
    }

    private static <R> void writeCsv(Path file, Rows<R> rows) {
        try (var csv = new CsvWriter<>(file, rows.table())) {
            rows.rows().forEach(csv::write);
        }
    }
}
