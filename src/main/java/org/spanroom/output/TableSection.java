package org.spanroom.output;

import java.util.List;
import org.spanroom.output.table.OutputCrs;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.TableBatch;
import org.spanroom.output.table.TableFile;
import org.spanroom.parallel.OrderedWriter;

/**
 * One table of a run with all the files that hold it.
 *
 * @param <R> what a row is
 */
final class TableSection<R> {
    /** Large enough to make handing over cheap, small enough that a few chunks take little memory. */
    static final int CHUNK = 512;

    private final Table<R> table;
    private final OutputCrs frame;
    private final List<TableFile> files;
    private final int threads;
    private long rows;

    TableSection(Table<R> table, OutputCrs frame, List<TableFile> files, int threads) {
        this.table = table;
        this.frame = frame;
        this.files = List.copyOf(files);
        this.threads = threads;
    }

    Table<R> table() {
        return table;
    }

    OutputCrs frame() {
        return frame;
    }

    String name() {
        return table.name();
    }

    /** Returns how many rows have been appended. */
    long rows() {
        return rows;
    }

    TableBatch<R> newBatch() {
        return new TableBatch<>(table, frame, files);
    }

    /** Moves the rows of a batch to the end of the files; for one thread at a time. */
    void append(TableBatch<R> batch) {
        rows += batch.append();
    }

    /** Writes rows in their order; several threads make them into bytes. */
    void write(List<R> all) {
        new OrderedWriter<TableBatch<R>>(
                        chunks(all.size(), CHUNK),
                        threads,
                        this::newBatch,
                        (batch, chunk) -> all.subList(chunk * CHUNK, Math.min(all.size(), (chunk + 1) * CHUNK))
                                .forEach(batch::add),
                        this::append)
                .run();
    }

    static int chunks(int rows, int atOnce) {
        return (int) ((rows + atOnce - 1L) / atOnce);
    }
}
