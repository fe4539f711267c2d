package org.spanroom.output.shapefile;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.spanroom.output.table.ByteBlock;
import org.spanroom.output.table.ByteSink;
import org.spanroom.output.table.Extent;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Row;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.TableFile;

/**
 * The geometry half of a Shapefile, .shp and .shx, as laid out in the ESRI Shapefile Technical Description (July 1998).
 *
 * <p>Lines become PolyLine records, polygons Polygon records with outer rings clockwise, rows without a shape null shapes. A
 * layer with heights uses the Z types; where one of its shapes has no heights, they are written as 0, since the format knows
 * no missing one.
 */
final class ShpFiles implements TableFile {
    private static final int HEADER_BYTES = 100;
    private static final int RECORD_HEADER_BYTES = 8;
    /** Any number below -1e38 says that there is no measure. */
    private static final double NO_MEASURE = -1e39;

    private final Path shpFile;
    private final Path shxFile;
    private final ByteSink shp;
    private final ByteSink shx;
    private final GeometryKind kind;
    private final boolean isPolygons;
    private final boolean hasZ;
    private final long mostBytes;
    private final Extent extent = new Extent();
    private int records;

    ShpFiles(Path shpFile, Path shxFile, Table<?> table, long mostBytes) {
        this.shpFile = shpFile;
        this.shxFile = shxFile;
        this.kind = table.geometry();
        this.isPolygons = kind == GeometryKind.POLYGON || kind == GeometryKind.MULTIPOLYGON;
        this.hasZ = table.hasZ();
        this.mostBytes = mostBytes;
        this.shp = new ByteSink(shpFile);
        this.shx = new ByteSink(shxFile);
        byte[] room = new byte[HEADER_BYTES];
        shp.bytes(room, 0, room.length);
        shx.bytes(room, 0, room.length);
    }

    @Override
    public RowBatch newBatch() {
        return new Records();
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
            case POLYGON, MULTIPOLYGON -> 5;
        };
        return hasZ && plane != 0 ? plane + 10 : plane;
    }

    /** Contents of records, which get their numbers when they are appended. */
    private final class Records implements RowBatch {
        private final ByteBlock block = new ByteBlock(1 << 14);
        private final ByteBlock headers = new ByteBlock();
        private final List<Extent> boxes = new ArrayList<>();
        private int[] ends = new int[64];
        private int rows;

        @Override
        public void add(Row<?> row) {
            Shape shape = row.placed();
            Extent box = Extent.of(shape);
            boxes.add(box);
            content(shape, box);
            if (rows == ends.length) {
                ends = Arrays.copyOf(ends, 2 * rows);
            }
            ends[rows++] = block.size();
        }

        @Override
        public void append() {
            int start = 0;
            for (int i = 0; i < rows; i++) {
                append(start, ends[i] - start);
                start = ends[i];
                extent.add(boxes.get(i));
            }
            rows = 0;
            boxes.clear();
            block.clear();
        }

        private void append(int start, int contentBytes) {
            long position = shp.position();
            if (position + RECORD_HEADER_BYTES + contentBytes > mostBytes) {
                throw new FormatLimitException(shpFile, "a Shapefile holds at most 2 GB of geometry");
            }
            headers.bigInt((int) (position / 2));
            headers.bigInt(contentBytes / 2);
            shx.take(headers);
            headers.bigInt(++records);
            headers.bigInt(contentBytes / 2);
            shp.take(headers);
            shp.bytes(block.array(), start, contentBytes);
        }

        private void content(Shape shape, Extent box) {
            if (shape.isEmpty()) {
                block.littleInt(0);
                return;
            }
            block.littleInt(typeCode());
            if (kind == GeometryKind.POINT) {
                vertices(shape);
                if (hasZ) {
                    block.littleDouble(shape.hasZ() ? shape.z(0) : 0);
                    block.littleDouble(NO_MEASURE);
                }
            } else {
                parts(isPolygons ? shape.oriented(false) : shape, box);
            }
        }

        private void parts(Shape shape, Extent box) {
            block.littleDouble(box.minX());
            block.littleDouble(box.minY());
            block.littleDouble(box.maxX());
            block.littleDouble(box.maxY());
            block.littleInt(shape.parts());
            block.littleInt(shape.size());
            for (int part = 0; part < shape.parts(); part++) {
                block.littleInt(shape.partStart(part));
            }
            vertices(shape);
            if (hasZ) {
                block.littleDouble(box.minZ());
                block.littleDouble(box.maxZ());
                for (int vertex = 0; vertex < shape.size(); vertex++) {
                    block.littleDouble(shape.hasZ() ? shape.z(vertex) : 0);
                }
            }
        }

        private void vertices(Shape shape) {
            for (int vertex = 0; vertex < shape.size(); vertex++) {
                block.littleDouble(shape.x(vertex));
                block.littleDouble(shape.y(vertex));
            }
        }
    }
}
