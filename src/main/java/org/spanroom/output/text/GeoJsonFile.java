package org.spanroom.output.text;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import org.spanroom.output.table.ByteBlock;
import org.spanroom.output.table.ByteSink;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.OutputCrs;
import org.spanroom.output.table.Row;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.TableFile;

/**
 * A layer as GeoJSON: RFC 7946, one FeatureCollection with one feature a line, UTF-8.
 *
 * <p>Coordinates are longitude and latitude on WGS 84 (CRS84), as the RFC demands, with up to 9 decimals: 1e-9 degrees are
 * 0.1 mm on the ground. Heights have up to 4. Outer rings turn counter-clockwise (section 3.1.6). Empty cells are
 * {@code null}, so that every feature has every member.
 */
public final class GeoJsonFile implements TableFile {
    private static final char[] HEX = "0123456789abcdef".toCharArray();
    private static final byte[] NULL = "null".getBytes(StandardCharsets.US_ASCII);

    private final Table<?> table;
    private final List<byte[]> keys;
    private final ByteSink out;
    private boolean isFirst = true;

    public GeoJsonFile(Path file, Table<?> table) {
        this.table = table;
        this.keys = keys(table.columns());
        this.out = new ByteSink(file);
        put("{\"type\":\"FeatureCollection\",\"name\":\"" + table.name() + "\",\"features\":[");
    }

    private static List<byte[]> keys(List<? extends Column<?>> columns) {
        return IntStream.range(0, columns.size())
                .mapToObj(i -> (i == 0 ? "\"" : ",\"") + columns.get(i).name() + "\":")
                .map(key -> key.getBytes(StandardCharsets.US_ASCII))
                .toList();
    }

    @Override
    public RowBatch newBatch() {
        return new Features();
    }

    @Override
    public void close() {
        put("\n]}\n");
        out.close();
    }

    private void put(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        out.bytes(bytes, 0, bytes.length);
    }

    /** Features, each with a comma and a line break before it, of which the first of the file loses the comma. */
    private final class Features implements RowBatch {
        private final ByteBlock block = new ByteBlock(1 << 16);

        @Override
        public void add(Row<?> row) {
            block.text(",\n{\"type\":\"Feature\",\"properties\":{");
            for (int column = 0; column < row.size(); column++) {
                block.bytes(keys.get(column));
                cell(row, column);
            }
            block.text("},\"geometry\":");
            geometry(row.onLonLat());
            block.octet('}');
        }

        @Override
        public void append() {
            int from = isFirst && block.size() > 0 ? 1 : 0;
            out.bytes(block.array(), from, block.size() - from);
            isFirst &= block.size() == 0;
            block.clear();
        }

        private void cell(Row<?> row, int column) {
            switch (row.cell(column)) {
                case TEXT -> {
                    int start = row.start(column);
                    quoted(row.bytes(), start, start + row.length(column));
                }
                case INTEGER, REAL -> {
                    int start = row.start(column);
                    block.bytes(row.bytes(), start, row.length(column));
                }
                case FLAG -> block.text(row.flag(column) ? "true" : "false");
                default -> block.bytes(NULL);
            }
        }

        private void geometry(Shape shape) {
            if (shape.isEmpty() || table.geometry() == GeometryKind.NONE) {
                block.bytes(NULL);
                return;
            }
            switch (table.geometry()) {
                case POINT -> {
                    block.text("{\"type\":\"Point\",\"coordinates\":");
                    position(shape, 0);
                }
                case LINE, MULTILINE -> lines(shape);
                case MULTIPOLYGON -> polygons(shape.oriented(true));
                default -> {
                    block.text("{\"type\":\"Polygon\",\"coordinates\":");
                    parts(shape.oriented(true));
                }
            }
            block.octet('}');
        }

        private void lines(Shape shape) {
            if (shape.parts() == 1) {
                block.text("{\"type\":\"LineString\",\"coordinates\":");
                positions(shape, 0);
            } else {
                block.text("{\"type\":\"MultiLineString\",\"coordinates\":");
                parts(shape);
            }
        }

        /** Also one polygon is several, so that readers find one kind of geometry in the file. */
        private void polygons(Shape shape) {
            block.text("{\"type\":\"MultiPolygon\",\"coordinates\":");
            for (int polygon = 0; polygon < shape.polygons(); polygon++) {
                block.octet(polygon == 0 ? '[' : ',');
                parts(shape, shape.firstRing(polygon), shape.ringsEnd(polygon));
            }
            block.octet(']');
        }

        private void parts(Shape shape) {
            parts(shape, 0, shape.parts());
        }

        private void parts(Shape shape, int from, int to) {
            for (int part = from; part < to; part++) {
                block.octet(part == from ? '[' : ',');
                positions(shape, part);
            }
            block.octet(']');
        }

        private void positions(Shape shape, int part) {
            for (int vertex = shape.partStart(part); vertex < shape.partEnd(part); vertex++) {
                block.octet(vertex == shape.partStart(part) ? '[' : ',');
                position(shape, vertex);
            }
            block.octet(']');
        }

        private void position(Shape shape, int vertex) {
            block.octet('[');
            block.shortDecimal(shape.x(vertex), OutputCrs.DEGREE_DECIMALS);
            block.octet(',');
            block.shortDecimal(shape.y(vertex), OutputCrs.DEGREE_DECIMALS);
            if (shape.hasZ() && table.hasZ()) {
                block.octet(',');
                block.shortDecimal(shape.z(vertex), OutputCrs.METER_DECIMALS);
            }
            block.octet(']');
        }

        /** Puts a JSON string; what needs an escape is a single byte in UTF-8, and no other character holds such a byte. */
        private void quoted(byte[] utf8, int start, int end) {
            block.octet('"');
            int from = start;
            for (int i = start; i < end; i++) {
                byte c = utf8[i];
                if ((c >= 0 && c < ' ') || c == '"' || c == '\\') {
                    block.bytes(utf8, from, i - from);
                    escaped(c);
                    from = i + 1;
                }
            }
            block.bytes(utf8, from, end - from);
            block.octet('"');
        }

        private void escaped(byte c) {
            block.octet('\\');
            if (c == '"' || c == '\\') {
                block.octet(c);
            } else {
                block.text("u00");
                block.octet(HEX[c >> 4]);
                block.octet(HEX[c & 0xF]);
            }
        }
    }
}
