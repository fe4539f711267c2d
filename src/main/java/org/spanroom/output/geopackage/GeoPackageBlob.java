package org.spanroom.output.geopackage;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The binary form of a shape in a GeoPackage: the header of OGC 12-128r18, 2.1.3.1, then ISO WKB; little-endian. */
final class GeoPackageBlob {
    private static final int HEADER_BYTES = 8;
    private static final byte LITTLE_ENDIAN = 1;
    private static final int WKB_Z = 1000;

    private GeoPackageBlob() {}

    /** Returns the blob of a shape that is not empty, without the optional envelope: readers find shapes by the spatial index. */
    static byte[] encode(Shape shape, Table<?> table, int srsId) {
        int ordinates = shape.hasZ() && table.hasZ() ? 3 : 2;
        ByteBuffer blob = ByteBuffer.allocate(HEADER_BYTES + wkbBytes(shape, table.geometry(), ordinates))
                .order(ByteOrder.LITTLE_ENDIAN);
        blob.put((byte) 'G').put((byte) 'P').put((byte) 0);
        blob.put(LITTLE_ENDIAN).putInt(srsId);
        wkb(blob, shape, table.geometry(), ordinates);
        return blob.array();
    }

    private static int wkbBytes(Shape shape, GeometryKind kind, int ordinates) {
        int vertices = shape.size() * ordinates * 8;
        return switch (kind) {
            case NONE -> 0;
            case POINT -> 5 + vertices;
            case LINE -> 9 + vertices;
            case MULTILINE -> 9 + 9 * shape.parts() + vertices;
            case POLYGON -> 9 + 4 * shape.parts() + vertices;
            case MULTIPOLYGON -> 9 + 9 * shape.polygons() + 4 * shape.parts() + vertices;
        };
    }

    private static void wkb(ByteBuffer blob, Shape shape, GeometryKind kind, int ordinates) {
        switch (kind) {
            case POINT -> {
                type(blob, 1, ordinates);
                vertices(blob, shape, 0, ordinates);
            }
            case LINE -> line(blob, shape, 0, ordinates);
            case MULTILINE -> {
                type(blob, 5, ordinates).putInt(shape.parts());
                for (int part = 0; part < shape.parts(); part++) {
                    line(blob, shape, part, ordinates);
                }
            }
            case POLYGON -> polygon(blob, shape.oriented(true), 0, ordinates);
            case MULTIPOLYGON -> {
                Shape turned = shape.oriented(true);
                type(blob, 6, ordinates).putInt(turned.polygons());
                for (int polygon = 0; polygon < turned.polygons(); polygon++) {
                    polygon(blob, turned, polygon, ordinates);
                }
            }
            default -> throw new IllegalStateException(kind.toString());
        }
    }

    private static void line(ByteBuffer blob, Shape shape, int part, int ordinates) {
        type(blob, 2, ordinates).putInt(shape.partEnd(part) - shape.partStart(part));
        vertices(blob, shape, part, ordinates);
    }

    private static void polygon(ByteBuffer blob, Shape shape, int polygon, int ordinates) {
        int end = shape.ringsEnd(polygon);
        type(blob, 3, ordinates).putInt(end - shape.firstRing(polygon));
        for (int ring = shape.firstRing(polygon); ring < end; ring++) {
            blob.putInt(shape.partEnd(ring) - shape.partStart(ring));
            vertices(blob, shape, ring, ordinates);
        }
    }

    private static ByteBuffer type(ByteBuffer blob, int code, int ordinates) {
        return blob.put(LITTLE_ENDIAN).putInt(ordinates == 3 ? code + WKB_Z : code);
    }

    private static void vertices(ByteBuffer blob, Shape shape, int part, int ordinates) {
        for (int vertex = shape.partStart(part); vertex < shape.partEnd(part); vertex++) {
            blob.putDouble(shape.x(vertex)).putDouble(shape.y(vertex));
            if (ordinates == 3) {
                blob.putDouble(shape.z(vertex));
            }
        }
    }
}
