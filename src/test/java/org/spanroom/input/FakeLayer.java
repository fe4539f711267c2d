package org.spanroom.input;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry;
import org.spanroom.input.layer.SourceGeometry.Kind;

/** A layer held in memory. */
final class FakeLayer implements LayerSource {
    private final List<String> fields;
    private final Optional<String> crs;
    private final List<Row> rows = new ArrayList<>();
    private String name = "fake.geojson";

    private record Row(SourceGeometry geometry, List<@Nullable Object> values) {}

    FakeLayer(String crs, String... fields) {
        this.crs = crs.isEmpty() ? Optional.empty() : Optional.of(crs);
        this.fields = List.of(fields);
    }

    FakeLayer named(String fileName) {
        name = fileName;
        return this;
    }

    FakeLayer line(double[] xy, @Nullable Object... values) {
        return geometry(Kind.LINES, List.of(xy), false, values);
    }

    FakeLayer point(double x, double y, @Nullable Object... values) {
        return geometry(Kind.POINTS, List.of(new double[] {x, y}), false, values);
    }

    FakeLayer geometry(Kind kind, List<double[]> parts, boolean hasZ, @Nullable Object... values) {
        return geometry(new SourceGeometry(kind, parts, hasZ, List.of()), values);
    }

    FakeLayer geometry(SourceGeometry geometry, @Nullable Object... values) {
        rows.add(new Row(geometry, Arrays.asList(values)));
        return this;
    }

    @Override
    public LayerHeader header() {
        return new LayerHeader(Path.of(name), LayerFormat.stem(Path.of(name)), fields, crs, rows.size());
    }

    @Override
    public long read(List<String> wanted, Consumer<SourceFeature> sink) {
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            var values = new ArrayList<@Nullable Object>();
            for (String name : wanted) {
                int index = fields.indexOf(name);
                values.add(index < 0 || index >= row.values.size() ? null : row.values.get(index));
            }
            sink.accept(new SourceFeature(i + 1L, "", row.geometry.kind().name(), row.geometry, values));
        }
        return rows.size();
    }

    @Override
    public void close() {}
}
