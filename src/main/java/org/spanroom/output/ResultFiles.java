package org.spanroom.output;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.OutputFormat;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.output.geopackage.GeoPackageWriter;
import org.spanroom.output.shapefile.OptionalShapefile;
import org.spanroom.output.shapefile.ShapefileFiles;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.OutputCrs;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.TableFile;
import org.spanroom.output.table.UsColumns;
import org.spanroom.output.text.CsvFile;
import org.spanroom.output.text.GeoJsonFile;
import org.spanroom.output.text.PackedCsvFile;
import org.spanroom.parallel.OrderedWriter;

/** The files of one run while they are written: for each table begun, a file of every format that holds it. */
public final class ResultFiles implements AutoCloseable {
    private final Path folder;
    private final OutputSettings settings;
    private final LayerOptions options;
    private final OutputCrs frame;
    private final Optional<GeoPackageWriter> geoPackage;
    private final List<OptionalShapefile> shapefiles = new ArrayList<>();
    private final List<AutoCloseable> layers = new ArrayList<>();
    private final List<AutoCloseable> others = new ArrayList<>();
    private final List<TableSection<?>> sections = new ArrayList<>();
    private final List<Table<?>> inGeoPackage = new ArrayList<>();
    private final int spans;
    private boolean finished;

    /**
     * Begins the files.
     *
     * @param folder where they are made, whatever the settings say
     * @param writtenAt noted in the files as the time of the last change
     * @param spans how many spans the run has
     * @param about what the GeoPackage says of where its contents are from, as JSON
     */
    ResultFiles(Path folder, OutputSettings settings, Instant writtenAt, int spans, String about) {
        this.folder = folder;
        this.settings = settings;
        this.spans = spans;
        this.options = new LayerOptions(settings.crs(), writtenAt).about(about);
        this.frame = options.frame();
        this.geoPackage = settings.formats().contains(OutputFormat.GEOPACKAGE)
                ? Optional.of(new GeoPackageWriter(folder.resolve(OutputFolder.GEOPACKAGE), options, spans))
                : Optional.empty();
    }

    /** Returns the names of the files in which a format holds a table, the one that a user opens first. */
    static List<String> names(String table, OutputFormat format) {
        return switch (format) {
            case GEOPACKAGE -> List.of(OutputFolder.GEOPACKAGE);
            case CSV -> List.of(table + ".csv");
            case GEOJSON -> List.of(table + ".geojson");
            case SHAPEFILE -> ShapefileFiles.names(table);
        };
    }

    /**
     * Begins a table.
     *
     * @param entry says which formats hold it
     * @param metric the table as this run has it
     */
    <R> TableSection<R> begin(ResultTable<?> entry, Table<R> metric) {
        Table<R> table = UsColumns.in(metric, settings.units());
        var files = new ArrayList<TableFile>();
        Set<OutputFormat> formats = entry.formatsAmong(settings.formats());
        for (OutputFormat format : formats) {
            files.add(file(format, table, entry.source().atLeast(spans)));
        }
        if (StyleFiles.areBeside(formats)) {
            StyleFiles.write(folder, table, formats);
        }
        var section = new TableSection<>(table, frame, files, settings.threads());
        sections.add(section);
        return section;
    }

    /**
     * Begins the file that later commands read, which every run has.
     *
     * @param whole whether every span is in the layers too, so that a GeoPackage has the lines already
     */
    <R> TableSection<R> beginForLater(Table<R> table, boolean whole) {
        boolean withLines = !whole || geoPackage.isEmpty();
        TableFile file = added(new PackedCsvFile(folder.resolve(RecordedSpans.FILE), table, withLines, spans), others);
        var section = new TableSection<>(table, frame, List.of(file), settings.threads());
        sections.add(section);
        return section;
    }

    /** Returns the groups of columns and tables that are written. */
    Set<ColumnGroup> groups() {
        return settings.groups();
    }

    private TableFile file(OutputFormat format, Table<?> table, int expectedRows) {
        Path path = folder.resolve(names(table.name(), format).get(0));
        return switch (format) {
            case GEOPACKAGE -> {
                inGeoPackage.add(table);
                yield added(geoPackage.orElseThrow().begin(table), layers);
            }
            case CSV -> added(new CsvFile(path, table), others);
            case GEOJSON -> added(new GeoJsonFile(path, table), others);
            case SHAPEFILE -> {
                var shapefile = new OptionalShapefile(path, table, options, expectedRows);
                shapefiles.add(shapefile);
                yield added(shapefile, others);
            }
        };
    }

    private static TableFile added(TableFile file, List<AutoCloseable> group) {
        group.add(file);
        return file;
    }

    /** Completes the files; the GeoPackage, whose indexes take their time, beside the others. */
    void finish() {
        finished = true;
        List<List<AutoCloseable>> groups = List.of(ofGeoPackage(), others);
        new OrderedWriter<>(
                        groups.size(),
                        settings.threads(),
                        () -> groups,
                        (all, number) -> closeAll(all.get(number)),
                        all -> {
                            // nothing is left to be done in order
                        })
                .run();
        geoPackage.ifPresent(written ->
                ProjectFile.write(folder.resolve(OutputFolder.GEOPACKAGE), inGeoPackage, written.extent(), options));
    }

    /** Closes the files of a run that failed; what is in them is worthless. */
    @Override
    public void close() {
        if (!finished) {
            closeAll(ofGeoPackage());
            closeAll(others);
        }
    }

    /** The GeoPackage is complete once all its layers are. */
    private List<AutoCloseable> ofGeoPackage() {
        var all = new ArrayList<>(layers);
        geoPackage.ifPresent(all::add);
        return all;
    }

    private static void closeAll(List<? extends AutoCloseable> files) {
        for (AutoCloseable file : files) {
            try {
                file.close();
            } catch (OutputException failure) {
                throw failure;
            } catch (Exception failure) {
                throw new IllegalStateException(failure);
            }
        }
    }

    /** Returns how many rows each table has, in the order in which the tables were begun. */
    Map<String, Long> rows() {
        var rows = new LinkedHashMap<String, Long>();
        sections.forEach(section -> rows.put(section.name(), section.rows()));
        return rows;
    }

    /** Returns what the user should know of the files, once they are closed. */
    List<String> notes() {
        var notes = new ArrayList<String>();
        geoPackage
                .map(GeoPackageWriter::shapesWithoutPlace)
                .filter(count -> count > 0)
                .ifPresent(count -> notes.add(count + " shapes cannot be shown in "
                        + options.crs().name() + "; their rows have no geometry."));
        shapefiles.forEach(file -> file.note().ifPresent(notes::add));
        return notes;
    }
}
