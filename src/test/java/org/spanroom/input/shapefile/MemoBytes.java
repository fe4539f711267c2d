package org.spanroom.input.shapefile;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.spanroom.input.HardShapes;
import org.spanroom.input.ShapefileBytes;

/**
 * A file of memo texts, written byte by byte in the layout of dBASE III, dBASE IV or FoxPro (all from memory), and the block at
 * which each text begins.
 */
@SuppressWarnings("ByteBufferBackingArray") // every buffer here is allocated here
public final class MemoBytes {
    private final Layout layout;
    private final byte[] bytes;
    private final List<Integer> blocks;

    MemoBytes(Layout layout, byte[] bytes, List<Integer> blocks) {
        this.layout = layout;
        this.bytes = bytes;
        this.blocks = List.copyOf(blocks);
    }

    /** The program family that writes so. */
    public enum Layout {
        DBASE_3(0x83, "dbt", 512),
        DBASE_4(0x8B, "dbt", 1024),
        FOXPRO(0xF5, "fpt", 64),
        VISUAL_FOXPRO(0x30, "fpt", 33);

        final int version;
        final String ending;
        final int blockSize;

        Layout(int version, String ending, int blockSize) {
            this.version = version;
            this.ending = ending;
            this.blockSize = blockSize;
        }
    }

    public byte[] bytes() {
        return bytes;
    }

    List<Integer> blocks() {
        return blocks;
    }

    public static MemoBytes of(Layout layout, byte[]... texts) {
        var out = new ByteArrayOutputStream();
        out.writeBytes(header(layout));
        pad(out, 512);
        pad(out, layout.blockSize);
        var blocks = new ArrayList<Integer>();
        for (byte[] text : texts) {
            blocks.add(out.size() / layout.blockSize);
            out.writeBytes(head(layout, text.length));
            out.writeBytes(text);
            if (layout == Layout.DBASE_3) {
                out.write(0x1A);
                out.write(0x1A);
            }
            pad(out, layout.blockSize);
        }
        return new MemoBytes(layout, out.toByteArray(), blocks);
    }

    private static byte[] header(Layout layout) {
        ByteBuffer header = ByteBuffer.allocate(512);
        if (layout == Layout.DBASE_4) {
            header.order(ByteOrder.LITTLE_ENDIAN).putShort(20, (short) layout.blockSize);
        } else if (layout != Layout.DBASE_3) {
            header.putShort(6, (short) layout.blockSize);
        }
        return header.array();
    }

    private static byte[] head(Layout layout, int length) {
        ByteBuffer head = ByteBuffer.allocate(layout == Layout.DBASE_3 ? 0 : 8);
        if (layout == Layout.DBASE_4) {
            head.order(ByteOrder.LITTLE_ENDIAN).putInt(0x0008FFFF).putInt(length + 8);
        } else if (layout != Layout.DBASE_3) {
            head.putInt(1).putInt(length);
        }
        return head.array();
    }

    private static void pad(ByteArrayOutputStream out, int blockSize) {
        while (out.size() % blockSize != 0) {
            out.write(0);
        }
    }

    /** Writes a layer of lines whose field "route" refers to these blocks, -1 for none, and the file with the texts. */
    Path layer(Path folder, boolean binary, int... references) throws IOException {
        if (bytes.length > 0) {
            Files.write(folder.resolve("layer." + layout.ending), bytes);
        }
        var shapes = new ShapefileBytes(3);
        byte[][][] rows = new byte[references.length][][];
        for (int i = 0; i < references.length; i++) {
            shapes.add(ShapefileBytes.parts(3, new double[][] {{-30, 40, -30, 40.001 + i}}));
            byte[] number = binary
                    ? ByteBuffer.allocate(4)
                            .order(ByteOrder.LITTLE_ENDIAN)
                            .putInt(Math.max(0, references[i]))
                            .array()
                    : (references[i] < 0 ? "" : String.format("%10d", references[i]))
                            .getBytes(StandardCharsets.US_ASCII);
            rows[i] = new byte[][] {number, "N".getBytes(StandardCharsets.US_ASCII)};
        }
        byte[] dbf = ShapefileBytes.dbf(0x03, List.of("route M " + (binary ? 4 : 10) + " 0", "kind C 4 0"), rows);
        dbf[0] = (byte) layout.version;
        Files.write(folder.resolve("layer.dbf"), dbf);
        Files.writeString(folder.resolve("layer.prj"), HardShapes.DEGREES);
        return shapes.write(folder, "layer");
    }
}
