package org.spanroom.output.text;

import java.nio.file.Path;
import org.spanroom.output.table.OneFileWriter;
import org.spanroom.output.table.OutputCrs;
import org.spanroom.output.table.RowWriter;
import org.spanroom.output.table.Table;

/** Writes a table as comma-separated values, in the form of RFC 4180 that {@link CsvFile} describes. */
public final class CsvWriter<R> implements RowWriter<R> {
    private final RowWriter<R> writer;

    public CsvWriter(Path file, Table<R> table) {
        writer = new OneFileWriter<>(new CsvFile(file, table), table, OutputCrs.lonLat());
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
