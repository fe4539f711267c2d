package org.spanroom.input;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.finding.Place;
import org.spanroom.input.geopackage.GeoPackageSource;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry;
import org.spanroom.model.Line;

/** A layer in the GeoPackage that an earlier run wrote, read back row by row. */
public final class RecordedLayer implements AutoCloseable {
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
     * @param file the GeoPackage of the run
     * @throws InputException if the file cannot be read or the layer is not in it
     */
    public static RecordedLayer open(Path file, String layer) {
        return new RecordedLayer(GeoPackageSource.open(file, Optional.of(layer), new FindingLog()), file);
    }

    /** Opens a layer or table of a run, with or without shapes, if the run wrote it. */
    public static Optional<RecordedLayer> find(Path file, String table) {
        return GeoPackageSource.find(file, table, new FindingLog()).map(source -> new RecordedLayer(source, file));
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
        return source.read(columns, feature -> sink.accept(row(feature)));
    }

    /** Reads all rows in the same order, without their shapes. */
    long readValues(List<String> columns, Consumer<RecordedRow> sink) {
        return source.read(
                columns,
                feature ->
                        sink.accept(new RecordedRow(feature.values(), Optional.empty(), Optional.empty(), List.of())));
    }

    private RecordedRow row(SourceFeature feature) {
        SourceGeometry shape = feature.geometry();
        Optional<double[]> ordinates = lonLat(shape);
        return new RecordedRow(
                feature.values(),
                ordinates
                        .filter(found -> shape.kind() == SourceGeometry.Kind.LINES)
                        .map(found -> Line.wrap(found, shape.hasZ())),
                ordinates
                        .filter(found -> shape.kind() == SourceGeometry.Kind.POINTS)
                        .map(found -> new Place(found[0], found[1])),
                polygons(shape));
    }

    /** Returns the rings of polygons; none where one of them has no place on the globe. */
    private List<List<Line>> polygons(SourceGeometry shape) {
        if (shape.kind() != SourceGeometry.Kind.POLYGONS || crs.isEmpty()) {
            return List.of();
        }
        List<List<Line>> polygons = new ArrayList<>();
        for (int ring = 0; ring < shape.parts().size(); ring++) {
            double[] ordinates = shape.parts().get(ring).clone();
            crs.get().toLonLat(ordinates, shape.hasZ() ? 3 : 2);
            if (!Geometries.isFinite(ordinates)) {
                return List.of();
            }
            if (shape.startsPolygon().get(ring)) {
                polygons.add(new ArrayList<>());
            }
            polygons.get(polygons.size() - 1).add(Line.wrap(ordinates, shape.hasZ()));
        }
        return polygons;
    }

    /** The lines and points of a run have one part a row. */
    private Optional<double[]> lonLat(SourceGeometry shape) {
        if (shape.parts().size() != 1 || crs.isEmpty()) {
            return Optional.empty();
        }
        double[] ordinates = shape.parts().get(0).clone();
        crs.get().toLonLat(ordinates, shape.hasZ() ? 3 : 2);
        return Geometries.isFinite(ordinates) ? Optional.of(ordinates) : Optional.empty();
    }

    @Override
    public void close() {
        source.close();
    }
}
