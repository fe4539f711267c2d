package org.spanroom.output.table;

/**
 * Rows of one table on their way to a file, one at a time; none is kept. Not for use by several threads.
 *
 * @param <R> what a row is
 */
public interface RowWriter<R> extends AutoCloseable {
    void write(R row);

    /** Completes the file. */
    @Override
    void close();
}
