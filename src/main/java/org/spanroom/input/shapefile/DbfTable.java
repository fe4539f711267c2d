package org.spanroom.input.shapefile;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.FileWindow;
import org.spanroom.input.layer.LayerLog;
import org.spanroom.model.Counted;

/** The attribute table of a shapefile (.dbf), read row by row; what its header claims is checked against its real size. */
final class DbfTable implements Closeable {
    private static final int HEADER = 32;
    private static final int DESCRIPTOR = 32;
    private static final int NAME = 11;
    private static final byte END_OF_FIELDS = 0x0D;

    /** The mark, the path of a database that Visual FoxPro keeps there (263 bytes, from memory), and some room. */
    private static final int MOST_AFTER_FIELDS = 320;

    private static final String REMEDY = "Export it again, or remove it to read only the shapes";

    private final Path file;
    private final FileWindow window;
    private List<DbfField> fields = List.of();
    private DbfEncoding encoding = DbfEncoding.unstated();
    private int version;
    private int headerLength;
    private int rowLength;
    private int fieldsEnd = HEADER;
    private long rows;

    private DbfTable(Path file, FileWindow window) {
        this.file = file;
        this.window = window;
    }

    /** Opens the table; the encoding is the one that a file beside it states, or else the table's own. */
    static DbfTable open(Path file, Optional<DbfEncoding> besides, LayerLog log) throws IOException {
        var table = new DbfTable(file, new FileWindow(file));
        try {
            table.readHeader(besides, log);
            return table;
        } catch (IOException | RuntimeException e) {
            table.close();
            throw e;
        }
    }

    List<DbfField> fields() {
        return fields;
    }

    long rows() {
        return rows;
    }

    DbfEncoding encoding() {
        return encoding;
    }

    /** Returns the first byte, which identifies the program family that wrote the table. */
    int version() {
        return version;
    }

    /** Returns the row's bytes, from its deletion mark on; valid until the next call. */
    ByteBuffer row(long row) throws IOException {
        return window.at(headerLength + row * rowLength, rowLength);
    }

    static boolean isDeleted(ByteBuffer row) {
        return row.get(row.position()) == '*';
    }

    @Override
    public void close() throws IOException {
        window.close();
    }

    private void readHeader(Optional<DbfEncoding> besides, LayerLog log) throws IOException {
        if (window.size() < HEADER + 1) {
            throw new InputException(file, "it is shorter than the header of a table", REMEDY);
        }
        ByteBuffer header = window.at(0, HEADER).order(ByteOrder.LITTLE_ENDIAN);
        int start = header.position();
        long stated = header.getInt(start + 4) & 0xFFFFFFFFL;
        version = header.get(start) & 0xFF;
        headerLength = header.getShort(start + 8) & 0xFFFF;
        rowLength = header.getShort(start + 10) & 0xFFFF;
        int language = header.get(start + 29) & 0xFF;
        encoding = besides.or(() -> DbfEncoding.languageByte(language)).orElseGet(DbfEncoding::unstated);
        if (headerLength < HEADER + 1 || headerLength > window.size() || rowLength < 1) {
            throw new InputException(
                    file,
                    "its header of " + Counted.of(headerLength, "byte") + " and rows of "
                            + Counted.of(rowLength, "byte") + " do not match its size",
                    REMEDY);
        }
        int fieldBytes = readFields(log);
        long room = (window.size() - headerLength) / rowLength;
        boolean isOdd = fieldBytes != rowLength || headerLength - fieldsEnd > MOST_AFTER_FIELDS;
        if (stated == 0 ? room > 0 && fieldBytes > 1 : room < stated && isOdd) {
            throw new InputException(
                    file,
                    "its header of " + Counted.of(headerLength, "byte") + " states " + Counted.of(stated, "row")
                            + " of "
                            + Counted.of(rowLength, "byte") + ", which does not match its size and its fields, "
                            + Counted.of(fieldBytes, "byte") + " in each row",
                    REMEDY);
        }
        rows = Math.min(stated, room);
        if (rows < stated) {
            log.layer(
                    FindingCode.LAYER_ISSUE,
                    "the .dbf claims " + Counted.of(stated, "row") + ", but has " + rows + "; it seems truncated");
        }
    }

    /** Reads the descriptions of the fields; returns how many bytes they and the deletion mark take in a row. */
    private int readFields(LayerLog log) throws IOException {
        var found = new ArrayList<DbfField>();
        int offset = 1;
        for (int at = HEADER; at + DESCRIPTOR <= headerLength; at += DESCRIPTOR) {
            ByteBuffer descriptor = window.at(at, DESCRIPTOR);
            fieldsEnd = at;
            if (descriptor.get(at(descriptor, 0)) == END_OF_FIELDS) {
                break;
            }
            fieldsEnd = at + DESCRIPTOR;
            DbfField field = field(descriptor, offset);
            found.add(field);
            offset += field.length();
        }
        if (offset > rowLength) {
            throw new InputException(
                    file, "its fields take " + Counted.of(offset, "byte") + ", but its rows have " + rowLength, REMEDY);
        }
        Set<String> names = new TreeSet<>();
        found.stream()
                .filter(field -> !names.add(field.name()))
                .forEach(field -> log.layer(
                        FindingCode.LAYER_ISSUE,
                        "the field \"" + field.name() + "\" occurs twice; the first one was used"));
        fields = List.copyOf(found);
        return offset;
    }

    private DbfField field(ByteBuffer descriptor, int offset) {
        int nameLength = 0;
        while (nameLength < NAME && descriptor.get(at(descriptor, nameLength)) != 0) {
            nameLength++;
        }
        int from = descriptor.arrayOffset() + descriptor.position();
        String name = encoding.decode(descriptor.array(), from, nameLength).strip();
        char type = (char) (descriptor.get(at(descriptor, 11)) & 0xFF);
        int length = descriptor.get(at(descriptor, 16)) & 0xFF;
        int decimals = descriptor.get(at(descriptor, 17)) & 0xFF;
        // Texts longer than 255 bytes keep the high byte of their length where other types have their decimals.
        return type == 'C'
                ? new DbfField(name, type, offset, length + 256 * decimals, 0)
                : new DbfField(name, type, offset, length, decimals);
    }

    private static int at(ByteBuffer buffer, int index) {
        return buffer.position() + index;
    }
}
