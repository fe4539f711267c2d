package org.spanroom.output.table;

import java.util.Arrays;
import org.spanroom.model.SpreadsheetText;

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
    private final int size;
    private final Cells cells;
    private final RowPlace place;
    private int next;

    /** The cells of a row, which a row with fewer columns may share. */
    private static final class Cells {
        private final Cell[] kinds;
        private final long[] wholes;
        private final double[] reals;
        private final boolean[] inUnits;
        private final int[] decimals;
        private final int[] starts;
        private final int[] ends;
        private final ByteBlock text = new ByteBlock();
        private final CsvLine csv;

        Cells(int columns) {
            kinds = new Cell[columns];
            wholes = new long[columns];
            reals = new double[columns];
            inUnits = new boolean[columns];
            decimals = new int[columns];
            starts = new int[columns];
            ends = new int[columns];
            csv = new CsvLine(columns);
        }

        void clear() {
            text.clear();
            csv.clear();
            Arrays.fill(starts, NOT_WRITTEN);
        }
    }

    /** Begins rows whose shapes may be asked for in the given frame. */
    Row(Table<R> table, OutputCrs frame) {
        this.table = table;
        size = table.columns().size();
        cells = new Cells(size);
        place = new RowPlace(frame);
    }

    private Row(Row<R> whole, int columns) {
        table = whole.table;
        size = columns;
        cells = whole.cells;
        place = whole.place;
    }

    /** Returns the first columns of this row, whatever is put into it later. */
    Row<R> first(int columns) {
        return new Row<>(this, columns);
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
        cells.clear();
        place.begin(itsShape);
    }

    @Override
    public void empty() {
        cells.kinds[next++] = Cell.EMPTY;
    }

    @Override
    public void text(String value) {
        cells.starts[next] = cells.text.size();
        cells.text.text(value);
        cells.ends[next] = cells.text.size();
        cells.kinds[next++] = Cell.TEXT;
    }

    @Override
    public void integer(long value) {
        cells.wholes[next] = value;
        cells.kinds[next++] = Cell.INTEGER;
    }

    @Override
    public void real(double value, int decimalsWanted) {
        cells.reals[next] = value;
        cells.inUnits[next] = false;
        cells.decimals[next] = decimalsWanted;
        cells.kinds[next++] = Cell.REAL;
    }

    @Override
    public void units(long units, int decimalsWanted) {
        cells.wholes[next] = units;
        cells.inUnits[next] = true;
        cells.decimals[next] = decimalsWanted;
        cells.kinds[next++] = Cell.REAL;
    }

    @Override
    public void flag(boolean value) {
        cells.wholes[next] = value ? 1 : 0;
        cells.kinds[next++] = Cell.FLAG;
    }

    public int size() {
        return size;
    }

    public Cell cell(int column) {
        return cells.kinds[column];
    }

    public long whole(int column) {
        return cells.wholes[column];
    }

    public boolean flag(int column) {
        return cells.wholes[column] != 0;
    }

    /** Returns a number rounded to the decimals of its column. */
    public double rounded(int column) {
        return cells.inUnits[column]
                ? Decimals.ofUnits(cells.wholes[column], cells.decimals[column])
                : Decimals.round(cells.reals[column], cells.decimals[column]);
    }

    /** Returns where a text, or a number's digits, begin in {@link #bytes}. */
    public int start(int column) {
        if (cells.starts[column] == NOT_WRITTEN) {
            cells.starts[column] = cells.text.size();
            putDigits(column, cells.text);
            cells.ends[column] = cells.text.size();
        }
        return cells.starts[column];
    }

    /** Returns how many bytes a text, or a number's digits, take; after {@link #start}. */
    public int length(int column) {
        return cells.ends[column] - cells.starts[column];
    }

    /** Returns the array that holds texts and digits, until the next {@link #start}. */
    public byte[] bytes() {
        return cells.text.array();
    }

    /** Puts the digits of a number. */
    void putDigits(int column, ByteBlock into) {
        if (cells.kinds[column] == Cell.INTEGER) {
            into.integer(cells.wholes[column]);
        } else if (cells.inUnits[column]) {
            into.units(cells.wholes[column], cells.decimals[column]);
        } else {
            into.decimal(cells.reals[column], cells.decimals[column]);
        }
    }

    /** Puts all cells as comma-separated values by RFC 4180, texts as they are, without an end of the line. */
    public void putCsv(ByteBlock into) {
        int length = cells.csv.length(this, size);
        into.bytes(cells.csv.bytes(), 0, length);
    }

    /** Returns whether a spreadsheet may run one of the texts as a formula; true in case of doubt. */
    public boolean mayHoldFormula() {
        for (int column = 0; column < size; column++) {
            if (cells.kinds[column] == Cell.TEXT
                    && SpreadsheetText.mayBeFormula(bytes(), cells.starts[column], length(column))) {
                return true;
            }
        }
        return false;
    }

    /** Returns the shape in the frame of the layers; empty if it has no place there. */
    public Shape placed() {
        return place.placed();
    }

    /** Returns whether the row has a shape that the frame of the layers has no place for. */
    public boolean isWithoutPlace() {
        return place.isWithoutPlace();
    }

    /** Returns the shape in longitude and latitude, rounded as in every layer. */
    public Shape onLonLat() {
        return place.onLonLat();
    }
}
