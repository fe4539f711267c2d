package org.spanroom.output;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Writes a layer as GeoJSON: RFC 7946, one FeatureCollection with one feature a line, UTF-8.
 *
 * <p>Coordinates are longitude and latitude on WGS 84 (CRS84), as the RFC demands, with up to 9 decimals: 1e-9 degrees are
 * 0.1 mm on the ground. Heights have up to 4. Outer rings turn counter-clockwise (section 3.1.6). Empty cells are
 * {@code null}, so that every feature has every member.
 */
public final class GeoJsonWriter<R> implements RowWriter<R> {
    private static final char[] HEX = "0123456789abcdef".toCharArray();

    private final Table<R> table;
    private final ByteSink out;
    private final Members members;
    private final Frame frame = Frame.lonLat();
    private boolean isFirst = true;

    public GeoJsonWriter(Path file, Table<R> table) {
        this.table = table;
        this.out = new ByteSink(file);
        this.members = new Members(table.columns());
        out.text("{\"type\":\"FeatureCollection\",\"name\":");
        quoted(table.name());
        out.text(",\"features\":[");
    }

    @Override
    public void write(R row) {
        out.text(isFirst ? "\n" : ",\n");
        isFirst = false;
        out.text("{\"type\":\"Feature\",\"properties\":{");
        members.next = 0;
        table.putCells(row, members);
        out.text("},\"geometry\":");
        geometry(frame.place(table.shape().apply(row)));
        out.octet('}');
    }

    @Override
    public void close() {
        out.text("\n]}\n");
        out.close();
    }

    private void geometry(Shape shape) {
        if (shape.isEmpty() || table.geometry() == GeometryKind.NONE) {
            out.text("null");
            return;
        }
        switch (table.geometry()) {
            case POINT -> {
                out.text("{\"type\":\"Point\",\"coordinates\":");
                position(shape, 0);
            }
            case LINE, MULTILINE -> lines(shape);
            default -> {
                out.text("{\"type\":\"Polygon\",\"coordinates\":");
                parts(shape.oriented(true));
            }
        }
        out.octet('}');
    }

    private void lines(Shape shape) {
        if (shape.parts() == 1) {
            out.text("{\"type\":\"LineString\",\"coordinates\":");
            positions(shape, 0);
        } else {
            out.text("{\"type\":\"MultiLineString\",\"coordinates\":");
            parts(shape);
        }
    }

    private void parts(Shape shape) {
        for (int part = 0; part < shape.parts(); part++) {
            out.octet(part == 0 ? '[' : ',');
            positions(shape, part);
        }
        out.octet(']');
    }

    private void positions(Shape shape, int part) {
        for (int vertex = shape.partStart(part); vertex < shape.partEnd(part); vertex++) {
            out.octet(vertex == shape.partStart(part) ? '[' : ',');
            position(shape, vertex);
        }
        out.octet(']');
    }

    private void position(Shape shape, int vertex) {
        out.octet('[');
        out.shortDecimal(shape.x(vertex), Frame.DEGREE_DECIMALS);
        out.octet(',');
        out.shortDecimal(shape.y(vertex), Frame.DEGREE_DECIMALS);
        if (shape.hasZ() && table.hasZ()) {
            out.octet(',');
            out.shortDecimal(shape.z(vertex), Frame.METRE_DECIMALS);
        }
        out.octet(']');
    }

    /** Puts a JSON string; runs that need no escape go out whole, so that surrogate pairs stay together. */
    private void quoted(String text) {
        out.octet('"');
        int from = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' || c == '"' || c == '\\') {
                out.text(text.substring(from, i));
                escaped(c);
                from = i + 1;
            }
        }
        out.text(from == 0 ? text : text.substring(from));
        out.octet('"');
    }

    private void escaped(char c) {
        out.octet('\\');
        if (c == '"' || c == '\\') {
            out.octet(c);
        } else {
            out.text("u00");
            out.octet(HEX[c >> 4]);
            out.octet(HEX[c & 0xF]);
        }
    }

    /** Puts the members of a feature's properties. */
    private final class Members implements CellSink {
        private final List<byte[]> keys;
        private int next;

        Members(List<Column<R>> columns) {
            keys = Stream.iterate(0, i -> i < columns.size(), i -> i + 1)
                    .map(i -> (i == 0 ? "\"" : ",\"") + columns.get(i).name() + "\":")
                    .map(key -> key.getBytes(StandardCharsets.US_ASCII))
                    .toList();
        }

        @Override
        public void empty() {
            key();
            out.text("null");
        }

        @Override
        public void text(String text) {
            key();
            quoted(text);
        }

        @Override
        public void integer(long value) {
            key();
            out.integer(value);
        }

        @Override
        public void real(double value, int decimals) {
            key();
            out.decimal(value, decimals);
        }

        @Override
        public void flag(boolean value) {
            key();
            out.text(value ? "true" : "false");
        }

        private void key() {
            byte[] key = keys.get(next++);
            out.bytes(key, 0, key.length);
        }
    }
}
