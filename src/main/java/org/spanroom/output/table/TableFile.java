package org.spanroom.output.table;

/**
 * One table in one file, on its way there: any number of threads make bytes of rows, each into batches of its own, and the batches
 * are appended one after another.
 */
public interface TableFile extends AutoCloseable {
    /** Returns an empty batch, for one thread at a time. */
    RowBatch newBatch();

    /** Completes the file, after the last batch. */
    @Override
    void close();

    /** Rows made ready for one file without knowing those before them. */
    interface RowBatch {
        void add(Row<?> row);

        /** Moves the rows to the end of the file; for one thread at a time, in the order of the rows. */
        void append();
    }
}
