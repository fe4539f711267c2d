package org.spanroom.output.table;

import java.util.List;

/**
 * Rows of one table on their way to one file, written by one thread.
 *
 * @param <R> what a row is
 */
public final class OneFileWriter<R> implements RowWriter<R> {
    private static final int ROWS_AT_ONCE = 64;

    private final TableFile file;
    private final TableBatch<R> batch;
    private int rows;

    public OneFileWriter(TableFile file, Table<R> table, OutputCrs frame) {
        this.file = file;
        this.batch = new TableBatch<>(table, frame, List.of(file));
    }

    @Override
    public void write(R row) {
        batch.add(row);
        rows++;
        if (rows % ROWS_AT_ONCE == 0) {
            batch.append();
        }
    }

    @Override
    public void close() {
        try (file) {
            batch.append();
        }
    }
}
