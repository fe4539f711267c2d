package org.spanroom.input.shapefile;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.spanroom.input.layer.FeatureFault;
import org.spanroom.input.layer.SourceGeometry.Kind;
import org.spanroom.input.layer.VertexBuffer;
import org.spanroom.model.Counted;

/**
 * One record of a .shp file taken apart, by the layout of the ESRI Shapefile Technical Description (ESRI White Paper, July
 * 1998). Every count is checked against the record's length before it is used.
 */
final class ShapeDecoder {
    private static final int BOX = 32;
    private static final int POINT = 16;

    private final VertexBuffer vertices = new VertexBuffer();
    private final RingOrder rings = new RingOrder();
    private Kind kind = Kind.NONE;
    private int type;
    private boolean heightsMissing;

    /** Reads the content of a record, the part after its eight-byte header. */
    void decode(ByteBuffer content) throws FeatureFault {
        vertices.clear();
        kind = Kind.NONE;
        type = 0;
        heightsMissing = false;
        content.order(ByteOrder.LITTLE_ENDIAN);
        demand(content, 4);
        type = content.getInt();
        switch (type) {
            case 0 -> {
                // null shape: the feature has a row, but no place
            }
            case 1, 11, 21 -> point(content);
            case 3, 13, 23 -> parts(content, Kind.LINES);
            case 5, 15, 25 -> parts(content, Kind.POLYGONS);
            case 8, 18, 28 -> points(content);
            case 31 -> kind = Kind.OTHER;
            default -> throw FeatureFault.unreadable("its shape type is " + type + ", which is not a Shapefile type");
        }
    }

    VertexBuffer vertices() {
        return vertices;
    }

    Kind kind() {
        return kind;
    }

    int type() {
        return type;
    }

    /** Returns true if the type has heights and the record is too short for them, as some programs write it. */
    boolean heightsMissing() {
        return heightsMissing;
    }

    /** Returns the name of a shape type. */
    static String name(int type) {
        String plain = switch (type % 10) {
            case 1 -> type == 31 ? "MultiPatch" : "Point";
            case 3 -> "PolyLine";
            case 5 -> "Polygon";
            case 8 -> "MultiPoint";
            default -> "null";
        };
        return type / 10 == 1 ? plain + "Z" : type / 10 == 2 ? plain + "M" : plain;
    }

    private void point(ByteBuffer content) throws FeatureFault {
        demand(content, POINT);
        double x = content.getDouble();
        double y = content.getDouble();
        double z = Double.NaN;
        if (type == 11) {
            heightsMissing = content.remaining() < Double.BYTES;
            z = heightsMissing ? Double.NaN : content.getDouble();
        }
        vertices.add(x, y, z);
        vertices.endPart();
        kind = Kind.POINTS;
    }

    private void points(ByteBuffer content) throws FeatureFault {
        demand(content, BOX + 4);
        int count = content.position(content.position() + BOX).getInt();
        demandVertices(content, count);
        vertices(content, 0, count, count);
        kind = Kind.POINTS;
    }

    private void parts(ByteBuffer content, Kind partKind) throws FeatureFault {
        demand(content, BOX + 8);
        int parts = content.position(content.position() + BOX).getInt();
        int count = content.getInt();
        if (parts < 0 || 4L * parts > content.remaining()) {
            throw FeatureFault.unreadable("it claims " + Counted.of(parts, "part") + ", more than its record can hold");
        }
        var starts = new int[parts + 1];
        for (int part = 0; part < parts; part++) {
            starts[part] = content.getInt();
        }
        starts[parts] = count;
        demandVertices(content, count);
        for (int part = 0; part < parts; part++) {
            if (starts[part] < 0 || starts[part] > starts[part + 1] || (part == 0 && starts[0] != 0)) {
                throw FeatureFault.unreadable("part " + (part + 1) + " begins at vertex " + starts[part]
                        + " and ends at " + starts[part + 1] + " of " + count);
            }
        }
        if (parts == 0 && count > 0) {
            throw FeatureFault.unreadable("it claims " + Counted.of(count, "vertex", "vertices") + ", but no part");
        }
        kind = partKind;
        if (partKind == Kind.POLYGONS && parts > 1) {
            polygon(content, starts);
            return;
        }
        for (int part = 0; part < parts; part++) {
            vertices(content, starts[part], starts[part + 1], count);
        }
    }

    /** Passes on the rings so that holes follow the ring around them, which the format does not ask for. */
    private void polygon(ByteBuffer content, int[] starts) throws FeatureFault {
        int[] order = rings.order(content, content.position(), starts);
        for (int ring : order) {
            if (rings.isOuter(ring)) {
                vertices.startPolygon();
            }
            vertices(content, starts[ring], starts[ring + 1], starts[starts.length - 1]);
        }
    }

    private void vertices(ByteBuffer content, int from, int to, int all) throws FeatureFault {
        int base = content.position();
        int heights = base + POINT * all + 2 * Double.BYTES;
        boolean hasHeights = type / 10 == 1 && content.limit() - heights >= (long) Double.BYTES * all;
        heightsMissing |= type / 10 == 1 && !hasHeights;
        for (int vertex = from; vertex < to; vertex++) {
            vertices.add(
                    content.getDouble(base + POINT * vertex),
                    content.getDouble(base + POINT * vertex + Double.BYTES),
                    hasHeights ? content.getDouble(heights + Double.BYTES * vertex) : Double.NaN);
        }
        vertices.endPart();
    }

    private static void demandVertices(ByteBuffer content, int count) throws FeatureFault {
        if (count < 0 || (long) POINT * count > content.remaining()) {
            throw FeatureFault.unreadable(
                    "it claims " + Counted.of(count, "vertex", "vertices") + ", more than its record can hold");
        }
    }

    private static void demand(ByteBuffer content, int bytes) throws FeatureFault {
        if (content.remaining() < bytes) {
            throw FeatureFault.unreadable(
                    "its record is " + Counted.of(bytes - content.remaining(), "byte") + " too short");
        }
    }
}
