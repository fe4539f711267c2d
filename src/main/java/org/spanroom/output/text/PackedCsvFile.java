package org.spanroom.output.text;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.Deflater;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;
import org.spanroom.output.table.ByteBlock;
import org.spanroom.output.table.ByteSink;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.OutputCrs;
import org.spanroom.output.table.Row;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.TableFile;

/**
 * A layer of lines as compressed comma-separated values, which programs read back: RFC 4180 in gzip (RFC 1952), UTF-8, one header line,
 * texts as they are. The last column may be the line as well-known text (OGC 06-103r4, section 7) in longitude and latitude on WGS 84, with
 * the decimals of the layers.
 *
 * <p>Every batch of rows is a gzip member of its own, so that threads compress beside each other; readers see one stream.
 */
public final class PackedCsvFile implements TableFile {
    /** The column of the line. */
    public static final String LINE = "line_wkt";

    /** Each call of the packing library takes time of its own. */
    private static final int PACKED_AT_ONCE = 1 << 15;

    /** From so many spans on time counts for more than size: a third of the time of packing for 27 % more bytes. */
    private static final int LARGE_RUN_SPANS = 100_000;

    private static final int LARGE_RUN_LEVEL = Deflater.BEST_SPEED;

    private final ByteSink out;
    private final boolean withLines;
    private final int level;

    /**
     * Creates the file.
     *
     * @param withLines whether the lines are written
     * @param spans how many the run has; a large one is packed faster and less tightly
     */
    public PackedCsvFile(Path file, Table<?> table, boolean withLines, int spans) {
        this.withLines = withLines;
        level = spans < LARGE_RUN_SPANS ? Deflater.DEFAULT_COMPRESSION : LARGE_RUN_LEVEL;
        out = new ByteSink(file);
        List<String> names = table.columns().stream().map(Column::name).toList();
        var header = new Rows();
        header.line.text(String.join(",", names) + (withLines ? "," + LINE : "") + "\r\n");
        header.pack();
        header.append();
    }

    @Override
    public RowBatch newBatch() {
        return new Rows();
    }

    @Override
    public void close() {
        out.close();
    }

    /** The library's packer, at a level of our choice. */
    private static final class Packer extends GZIPOutputStream {
        Packer(OutputStream out, int level) throws IOException {
            super(out);
            def.setLevel(level);
        }
    }

    private final class Rows implements RowBatch {
        private final ByteBlock line = new ByteBlock(2 * PACKED_AT_ONCE);
        private final ByteArrayOutputStream packed = new ByteArrayOutputStream(1 << 16);
        private @Nullable GZIPOutputStream packer;

        @Override
        public void add(Row<?> row) {
            row.putCsv(line);
            if (withLines) {
                line.octet(',');
                wellKnownText(row.onLonLat());
            }
            line.octet('\r');
            line.octet('\n');
            if (line.size() >= PACKED_AT_ONCE) {
                pack();
            }
        }

        @Override
        public void append() {
            if (line.size() > 0) {
                pack();
            }
            try {
                if (packer != null) {
                    // Also gives back what the library holds outside of the heap, which no collector sees.
                    packer.close();
                    packer = null;
                }
            } catch (IOException failure) {
                throw new UncheckedIOException(failure);
            }
            byte[] member = packed.toByteArray();
            out.bytes(member, 0, member.length);
            packed.reset();
        }

        private void pack() {
            try {
                if (packer == null) {
                    packer = new Packer(packed, level);
                }
                packer.write(line.array(), 0, line.size());
            } catch (IOException failure) {
                throw new UncheckedIOException(failure);
            }
            line.clear();
        }

        private void wellKnownText(Shape shape) {
            if (shape.isEmpty()) {
                return;
            }
            line.bytes((shape.hasZ() ? "\"LINESTRING Z (" : "\"LINESTRING (").getBytes(StandardCharsets.US_ASCII));
            for (int vertex = 0; vertex < shape.size(); vertex++) {
                if (vertex > 0) {
                    line.octet(',');
                }
                line.shortDecimal(shape.x(vertex), OutputCrs.DEGREE_DECIMALS);
                line.octet(' ');
                line.shortDecimal(shape.y(vertex), OutputCrs.DEGREE_DECIMALS);
                if (shape.hasZ()) {
                    line.octet(' ');
                    line.shortDecimal(shape.z(vertex), OutputCrs.METER_DECIMALS);
                }
            }
            line.text(")\"");
        }
    }
}
