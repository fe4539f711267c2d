package org.spanroom.output.text;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.spanroom.model.SpreadsheetText;
import org.spanroom.output.table.ByteBlock;
import org.spanroom.output.table.ByteSink;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Row;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.TableFile;

/**
 * A table as comma-separated values: RFC 4180 with its line ends CR LF, UTF-8 without a byte-order mark, one header line, points
 * as decimal marks whatever the locale. Shapes are left out.
 *
 * <p>A text that a spreadsheet would run as a formula gets an apostrophe ({@link SpreadsheetText}). A cell is quoted only where RFC 4180 asks
 * for it.
 */
public final class CsvFile implements TableFile {
    private final ByteSink out;

    public CsvFile(Path file, Table<?> table) {
        out = new ByteSink(file);
        List<String> names = table.columns().stream().map(Column::name).toList();
        byte[] header = (String.join(",", names) + "\r\n").getBytes(StandardCharsets.US_ASCII);
        out.bytes(header, 0, header.length);
    }

    /** Returns a text as it was before the apostrophe that guards spreadsheets. */
    public static String unguarded(String cell) {
        return SpreadsheetText.restored(cell);
    }

    @Override
    public RowBatch newBatch() {
        return new Lines();
    }

    @Override
    public void close() {
        out.close();
    }

    private final class Lines implements RowBatch {
        private final ByteBlock block = new ByteBlock(1 << 16);
        private final CsvCells cells = new CsvCells(block);

        @Override
        public void add(Row<?> row) {
            cells.row(row);
            block.octet('\r');
            block.octet('\n');
        }

        @Override
        public void append() {
            out.take(block);
        }
    }
}
