package org.spanroom.output.table;

import java.util.List;

/**
 * Rows of one table on their way to every file that holds it: each row is calculated once. For one thread at a time.
 *
 * @param <R> what a row is
 */
public final class TableBatch<R> {
    private final Row<R> row;
    private final List<TableFile.RowBatch> batches;
    private int rows;

    public TableBatch(Table<R> table, OutputCrs frame, List<? extends TableFile> files) {
        row = new Row<>(table, frame);
        batches = files.stream().map(TableFile::newBatch).toList();
    }

    public void add(R added) {
        rows++;
        if (batches.isEmpty()) {
            return;
        }
        row.load(added);
        for (TableFile.RowBatch batch : batches) {
            batch.add(row);
        }
    }

    /**
     * Adds a row that was packed.
     *
     * @param packed has read the row
     * @param order the places of the table's columns among the packed ones
     * @param found what cells that were not packed are found from
     */
    public <L> void add(PackedRows<?, L>.Reader packed, int[] order, L found, Shape shape) {
        rows++;
        if (batches.isEmpty()) {
            return;
        }
        row.begin(shape);
        packed.put(order, found, row);
        for (TableFile.RowBatch batch : batches) {
            batch.add(row);
        }
    }

    /** Returns the first columns of every row that is added later, for other files; this batch must have a file, or no row is calculated. */
    public Row<R> firstColumns(int columns) {
        return row.first(columns);
    }

    /** Adds a row that another batch has been given, as far as it has this table's columns. */
    public void addShared(Row<R> shared) {
        rows++;
        for (TableFile.RowBatch batch : batches) {
            batch.add(shared);
        }
    }

    /** Moves the rows to the end of their files, and returns how many there were. */
    public int append() {
        batches.forEach(TableFile.RowBatch::append);
        int appended = rows;
        rows = 0;
        return appended;
    }
}
