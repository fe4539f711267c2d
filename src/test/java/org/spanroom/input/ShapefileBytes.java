package org.spanroom.input;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Writes small shapefiles byte by byte after the ESRI White Paper of July 1998, whole or wrong on purpose. */
@SuppressWarnings("ByteBufferBackingArray") // every buffer here is allocated here
public final class ShapefileBytes {
    private final int type;
    private final List<byte[]> records = new ArrayList<>();

    public ShapefileBytes(int type) {
        this.type = type;
    }

    public ShapefileBytes add(byte[] content) {
        records.add(content);
        return this;
    }

    public byte[] shp() {
        int length =
                100 + records.stream().mapToInt(content -> 8 + content.length).sum();
        ByteBuffer file = header(length);
        for (int i = 0; i < records.size(); i++) {
            file.putInt(i + 1).putInt(records.get(i).length / 2).put(records.get(i));
        }
        return file.array();
    }

    public byte[] shx() {
        ByteBuffer file = header(100 + 8 * records.size());
        int offset = 100;
        for (byte[] content : records) {
            file.putInt(offset / 2).putInt(content.length / 2);
            offset += 8 + content.length;
        }
        return file.array();
    }

    /** Writes .shp and .shx beside each other and returns the first. */
    public Path write(Path folder, String stem) throws IOException {
        Files.write(folder.resolve(stem + ".shx"), shx());
        return Files.write(folder.resolve(stem + ".shp"), shp());
    }

    private ByteBuffer header(int length) {
        ByteBuffer file = ByteBuffer.allocate(length);
        file.putInt(0, 9994).putInt(24, length / 2);
        file.order(ByteOrder.LITTLE_ENDIAN).putInt(28, 1000).putInt(32, type).order(ByteOrder.BIG_ENDIAN);
        return file.position(100);
    }

    /** A record of a type and whatever ordinates follow it. */
    public static byte[] point(int type, double... ordinates) {
        ByteBuffer content = little(4 + 8 * ordinates.length).putInt(type);
        for (double ordinate : ordinates) {
            content.putDouble(ordinate);
        }
        return content.array();
    }

    public static byte[] nullShape() {
        return little(4).putInt(0).array();
    }

    public static byte[] multiPoint(int type, double[] xy, double... heightsAndMeasures) {
        ByteBuffer content = little(40 + 8 * xy.length + tail(heightsAndMeasures, xy.length / 2))
                .putInt(type)
                .position(36)
                .putInt(xy.length / 2);
        putAll(content, xy);
        putTail(content, heightsAndMeasures, xy.length / 2);
        return content.array();
    }

    /** A line or polygon; after the parts come heights and measures, one a vertex, each list with its range before it. */
    public static byte[] parts(int type, double[][] parts, double... heightsAndMeasures) {
        int vertices = 0;
        for (double[] part : parts) {
            vertices += part.length / 2;
        }
        ByteBuffer content = little(44 + 4 * parts.length + 16 * vertices + tail(heightsAndMeasures, vertices))
                .putInt(type)
                .position(36)
                .putInt(parts.length)
                .putInt(vertices);
        int start = 0;
        for (double[] part : parts) {
            content.putInt(start);
            start += part.length / 2;
        }
        for (double[] part : parts) {
            putAll(content, part);
        }
        putTail(content, heightsAndMeasures, vertices);
        return content.array();
    }

    private static int tail(double[] values, int vertices) {
        return vertices == 0 ? 0 : 8 * values.length + 16 * (values.length / vertices);
    }

    private static void putTail(ByteBuffer content, double[] values, int vertices) {
        for (int i = 0; i < values.length; i++) {
            if (i % vertices == 0) {
                content.putDouble(0).putDouble(0);
            }
            content.putDouble(values[i]);
        }
    }

    private static void putAll(ByteBuffer content, double[] values) {
        for (double value : values) {
            content.putDouble(value);
        }
    }

    private static ByteBuffer little(int length) {
        return ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
    }

    /**
     * A table of the given columns, each as "name type length decimals", and rows of texts that are padded to their
     * columns.
     */
    public static byte[] dbf(int languageByte, List<String> columns, byte[][]... rows) {
        var out = new ByteArrayOutputStream();
        int headerLength = 33 + 32 * columns.size();
        int rowLength = 1
                + columns.stream()
                        .mapToInt(column -> Integer.parseInt(column.split(" ", -1)[2]))
                        .sum();
        out.writeBytes(little(32)
                .put((byte) 3)
                .putInt(4, rows.length)
                .putShort(8, (short) headerLength)
                .putShort(10, (short) rowLength)
                .put(29, (byte) languageByte)
                .array());
        for (String column : columns) {
            String[] words = column.split(" ", -1);
            ByteBuffer descriptor = little(32).put(words[0].getBytes(StandardCharsets.UTF_8));
            int length = Integer.parseInt(words[2]);
            descriptor.put(11, (byte) words[1].charAt(0)).put(16, (byte) length);
            descriptor.put(17, (byte) (length > 255 ? length / 256 : Integer.parseInt(words[3])));
            out.writeBytes(descriptor.array());
        }
        out.write(0x0D);
        for (byte[][] row : rows) {
            out.write(' ');
            for (int i = 0; i < row.length; i++) {
                ByteBuffer cell =
                        ByteBuffer.allocate(Integer.parseInt(columns.get(i).split(" ", -1)[2]));
                while (cell.hasRemaining()) {
                    cell.put((byte) ' ');
                }
                out.writeBytes(cell.put(0, row[i]).array());
            }
        }
        out.write(0x1A);
        return out.toByteArray();
    }

    /** A row of ASCII texts. */
    public static byte[][] row(String... cells) {
        byte[][] row = new byte[cells.length][];
        for (int i = 0; i < cells.length; i++) {
            row[i] = cells[i].getBytes(StandardCharsets.ISO_8859_1);
        }
        return row;
    }
}
