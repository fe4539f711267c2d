package org.spanroom.input;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.model.Line;

/** A layer in the GeoPackage that an earlier run wrote, read back row by row. */
public final class RecordedLayer implements AutoCloseable {
    private static final String GEOPACKAGE = "spanroom.gpkg";

    private final LayerSource source;
    private final Path file;
    private final Optional<ReferenceSystem> crs;

    private RecordedLayer(LayerSource source, Path file) {
        this.source = source;
        this.file = file;
        this.crs = source.header().crsDefinition().map(ReferenceSystem::parse);
    }

    /**
     * Opens a layer or table of a run.
     *
     * @param folder the results of the run
     * @throws InputException if the run wrote no GeoPackage or the layer is not in it
     */
    public static RecordedLayer open(Path folder, String layer) {
        Path file = folder.resolve(GEOPACKAGE);
        if (!isIn(folder)) {
            throw new InputException(
                    folder, "the run wrote no spanroom.gpkg", "Make the run again with GeoPackage among its formats.");
        }
        return new RecordedLayer(LayerSources.open(file, Optional.of(layer), new FindingLog()), file);
    }

    /** Returns whether a run wrote layers into a folder that can be read back. */
    static boolean isIn(Path folder) {
        return Files.isRegularFile(folder.resolve(GEOPACKAGE));
    }

    public Path file() {
        return file;
    }

    /** Returns the names of its columns, in their order. */
    public List<String> columns() {
        return source.header().fields();
    }

    /** Returns the system that its shapes are in. */
    public Optional<ReferenceSystem> crs() {
        return crs;
    }

    /** Reads all rows in the order in which they were written. */
    public long read(List<String> columns, Consumer<RecordedRow> sink) {
        return source.read(columns, feature -> sink.accept(new RecordedRow(feature.values(), line(feature))));
    }

    /** Reads all rows likewise, without their lines. */
    long readValues(List<String> columns, Consumer<RecordedRow> sink) {
        return source.read(columns, feature -> sink.accept(new RecordedRow(feature.values(), Optional.empty())));
    }

    private Optional<Line> line(SourceFeature feature) {
        SourceGeometry shape = feature.geometry();
        if (shape.kind() != SourceGeometry.Kind.LINES || shape.parts().size() != 1 || crs.isEmpty()) {
            return Optional.empty();
        }
        double[] ordinates = shape.parts().get(0).clone();
        crs.get().toLonLat(ordinates, shape.hasZ() ? 3 : 2);
        return Geometries.isFinite(ordinates) ? Optional.of(Line.wrap(ordinates, shape.hasZ())) : Optional.empty();
    }

    @Override
    public void close() {
        source.close();
    }
}
