package org.spanroom.output.text;

import java.nio.file.Path;
import org.spanroom.output.table.OneFileWriter;
import org.spanroom.output.table.OutputCrs;
import org.spanroom.output.table.RowWriter;
import org.spanroom.output.table.Table;

/** Writes a layer as GeoJSON (RFC 7946), in the form that {@link GeoJsonFile} describes. */
public final class GeoJsonWriter<R> implements RowWriter<R> {
    private final RowWriter<R> writer;

    public GeoJsonWriter(Path file, Table<R> table) {
        writer = new OneFileWriter<>(new GeoJsonFile(file, table), table, OutputCrs.lonLat());
    }

    @Override
    public void write(R row) {
        writer.write(row);
    }

    @Override
    public void close() {
        writer.close();
    }
}
