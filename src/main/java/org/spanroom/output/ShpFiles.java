package org.spanroom.output;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;

/**
 * The geometry half of a Shapefile, .shp and .shx, as laid out in the ESRI Shapefile Technical Description (July 1998).
 *
 * <p>Lines become PolyLine records, polygons Polygon records with outer rings clockwise, rows without a shape null shapes. A
 * layer with heights uses the Z types; where one of its shapes has no heights, they are written as 0, since the format knows
 * no missing one.
 */
final class ShpFiles implements AutoCloseable {
    private static final int HEADER_BYTES = 100;
    private static final int RECORD_HEADER_BYTES = 8;
    /** Any number below -1e38 says that there is no measure. */
    private static final double NO_MEASURE = -1e39;

    private final Path shpFile;
    private final Path shxFile;
    private final ByteSink shp;
    private final ByteSink shx;
    private final GeometryKind kind;
    private final boolean hasZ;
    private final long mostBytes;
    private final Extent extent = new Extent();
    private int records;

    ShpFiles(Path shpFile, Path shxFile, Table<?> table, long mostBytes) {
        this.shpFile = shpFile;
        this.shxFile = shxFile;
        this.kind = table.geometry();
        this.hasZ = table.hasZ();
        this.mostBytes = mostBytes;
        this.shp = new ByteSink(shpFile);
        this.shx = new ByteSink(shxFile);
        byte[] room = new byte[HEADER_BYTES];
        shp.bytes(room, 0, room.length);
        shx.bytes(room, 0, room.length);
    }

    void write(Shape shape) {
        int contentBytes = contentBytes(shape);
        long position = shp.position();
        if (position + RECORD_HEADER_BYTES + contentBytes > mostBytes) {
            throw new FormatLimitException(shpFile, "a Shapefile holds at most 2 GB of geometry");
        }
        shx.bigInt((int) (position / 2));
        shx.bigInt(contentBytes / 2);
        shp.bigInt(++records);
        shp.bigInt(contentBytes / 2);
        content(shape);
    }

    @Override
    public void close() {
        long shpBytes = shp.position();
        long shxBytes = shx.position();
        try (shx) {
            shp.close();
        }
        ByteSink.patch(shpFile, header(shpBytes));
        ByteSink.patch(shxFile, header(shxBytes));
    }

    private int contentBytes(Shape shape) {
        if (shape.isEmpty()) {
            return 4;
        }
        if (kind == GeometryKind.POINT) {
            return 4 + 16 + (hasZ ? 16 : 0);
        }
        return 4 + 32 + 8 + 4 * shape.parts() + 16 * shape.size() + (hasZ ? 16 + 8 * shape.size() : 0);
    }

    private void content(Shape shape) {
        if (shape.isEmpty()) {
            shp.littleInt(0);
            return;
        }
        shp.littleInt(typeCode());
        if (kind == GeometryKind.POINT) {
            extent.add(shape);
            vertices(shape);
            if (hasZ) {
                shp.littleDouble(shape.hasZ() ? shape.z(0) : 0);
                shp.littleDouble(NO_MEASURE);
            }
        } else {
            parts(kind == GeometryKind.POLYGON ? shape.oriented(false) : shape);
        }
    }

    private void parts(Shape shape) {
        Extent box = Extent.of(shape);
        extent.add(box);
        shp.littleDouble(box.minX());
        shp.littleDouble(box.minY());
        shp.littleDouble(box.maxX());
        shp.littleDouble(box.maxY());
        shp.littleInt(shape.parts());
        shp.littleInt(shape.size());
        for (int part = 0; part < shape.parts(); part++) {
            shp.littleInt(shape.partStart(part));
        }
        vertices(shape);
        if (hasZ) {
            shp.littleDouble(box.minZ());
            shp.littleDouble(box.maxZ());
            for (int vertex = 0; vertex < shape.size(); vertex++) {
                shp.littleDouble(shape.hasZ() ? shape.z(vertex) : 0);
            }
        }
    }

    private void vertices(Shape shape) {
        for (int vertex = 0; vertex < shape.size(); vertex++) {
            shp.littleDouble(shape.x(vertex));
            shp.littleDouble(shape.y(vertex));
        }
    }

    private byte[] header(long fileBytes) {
        ByteBuffer header = ByteBuffer.allocate(HEADER_BYTES);
        header.putInt(0, 9994).putInt(24, (int) (fileBytes / 2));
        header.order(ByteOrder.LITTLE_ENDIAN).putInt(28, 1000).putInt(32, typeCode());
        if (!extent.isEmpty()) {
            header.putDouble(36, extent.minX()).putDouble(44, extent.minY());
            header.putDouble(52, extent.maxX()).putDouble(60, extent.maxY());
            header.putDouble(68, extent.minZ()).putDouble(76, extent.maxZ());
        }
        return header.array();
    }

    private int typeCode() {
        int plane = switch (kind) {
            case NONE -> 0;
            case POINT -> 1;
            case LINE, MULTILINE -> 3;
            case POLYGON -> 5;
        };
        return hasZ && plane != 0 ? plane + 10 : plane;
    }
}
