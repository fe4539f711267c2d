package org.spanroom.output.table;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * One row of a table, calculated once for all files that hold it: its cells as values and as text in UTF-8, and its shape. For one
 * thread; loaded again for each row.
 */
public final class Row<R> implements CellSink {
    /** What a cell holds. */
    public enum Cell {
        EMPTY,
        TEXT,
        INTEGER,
        REAL,
        FLAG
    }

    private static final int NOT_WRITTEN = -1;

    private final Table<R> table;
    private final OutputCrs frame;
    private final OutputCrs lonLat = OutputCrs.lonLat();
    private final Cell[] cells;
    private final long[] wholes;
    private final double[] reals;
    private final int[] decimals;
    private final int[] starts;
    private final int[] ends;
    private final ByteBlock text = new ByteBlock();
    private int next;
    private Shape shape = Shape.EMPTY;
    private @Nullable Shape placed;
    private @Nullable Shape onLonLat;

    /** Begins rows whose shapes may be asked for in the given frame. */
    Row(Table<R> table, OutputCrs frame) {
        int size = table.columns().size();
        this.table = table;
        this.frame = frame;
        this.cells = new Cell[size];
        this.wholes = new long[size];
        this.reals = new double[size];
        this.decimals = new int[size];
        this.starts = new int[size];
        this.ends = new int[size];
    }

    void load(R row) {
        begin(
                table.geometry() == GeometryKind.NONE
                        ? Shape.EMPTY
                        : table.shape().apply(row));
        table.putCells(row, this);
    }

    /** Begins a row of a shape, whose cells are put next. */
    void begin(Shape itsShape) {
        next = 0;
        text.clear();
        Arrays.fill(starts, NOT_WRITTEN);
        shape = itsShape;
        placed = null;
        onLonLat = null;
    }

    @Override
    public void empty() {
        cells[next++] = Cell.EMPTY;
    }

    @Override
    public void text(String value) {
        starts[next] = text.size();
        text.text(value);
        ends[next] = text.size();
        cells[next++] = Cell.TEXT;
    }

    @Override
    public void integer(long value) {
        wholes[next] = value;
        cells[next++] = Cell.INTEGER;
    }

    @Override
    public void real(double value, int decimalsWanted) {
        reals[next] = value;
        decimals[next] = decimalsWanted;
        cells[next++] = Cell.REAL;
    }

    @Override
    public void flag(boolean value) {
        wholes[next] = value ? 1 : 0;
        cells[next++] = Cell.FLAG;
    }

    public int size() {
        return cells.length;
    }

    public Cell cell(int column) {
        return cells[column];
    }

    public long whole(int column) {
        return wholes[column];
    }

    public boolean flag(int column) {
        return wholes[column] != 0;
    }

    /** Returns a number rounded to the decimals of its column. */
    public double rounded(int column) {
        return Decimals.round(reals[column], decimals[column]);
    }

    /** Returns where a text, or a number's digits, begin in {@link #bytes}. */
    public int start(int column) {
        if (starts[column] == NOT_WRITTEN) {
            starts[column] = text.size();
            if (cells[column] == Cell.INTEGER) {
                text.integer(wholes[column]);
            } else {
                text.decimal(reals[column], decimals[column]);
            }
            ends[column] = text.size();
        }
        return starts[column];
    }

    /** Returns how many bytes a text, or a number's digits, take; after {@link #start}. */
    public int length(int column) {
        return ends[column] - starts[column];
    }

    /** Returns the array that holds texts and digits, until the next {@link #start}. */
    public byte[] bytes() {
        return text.array();
    }

    /** Returns the shape in the frame of the layers; empty if it has no place there. */
    public Shape placed() {
        Shape known = placed;
        if (known == null) {
            known = frame.place(shape);
            placed = known;
        }
        return known;
    }

    /** Returns whether the row has a shape that the frame of the layers has no place for. */
    public boolean isWithoutPlace() {
        return placed().isEmpty() && !shape.isEmpty();
    }

    /** Returns the shape in longitude and latitude, rounded as in every layer. */
    public Shape onLonLat() {
        if (frame.isLonLat()) {
            return placed();
        }
        Shape known = onLonLat;
        if (known == null) {
            known = lonLat.place(shape);
            onLonLat = known;
        }
        return known;
    }
}
