package org.spanroom.input.shapefile;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.FeatureFault;
import org.spanroom.input.layer.FileWindow;
import org.spanroom.input.layer.LayerLog;
import org.spanroom.model.Counted;

/**
 * The records of a .shp file, one after another: each where the one before it ends, or by the offsets of the .shx (ESRI White Paper,
 * July 1998, main file and index file).
 *
 * <p>The index counts only where the records do not follow one another without a fault, or are not as many as the table has rows: programs that
 * change a shapefile leave dead records behind. Without it a damaged length ends the reading: with a finding where nothing can follow, with an
 * exception where something did.
 */
final class ShapeRecords implements Closeable {
    static final int HEADER = 100;

    private static final int MAGIC = 9994;
    private static final int RECORD_HEADER = 8;
    private static final int LONGEST_RECORD = 1 << 30;

    private final Path file;
    private final FileWindow window;
    private int @Nullable [] offsets;
    private int fileType;
    private long position = HEADER;
    private long taken;
    private long bytesTaken;
    private int lastNumber;
    private long statedSize;

    private ShapeRecords(Path file, FileWindow window) {
        this.file = file;
        this.window = window;
    }

    /** Opens the file and checks its header. */
    static ShapeRecords open(Path shp, LayerLog log) throws IOException {
        var records = new ShapeRecords(shp, new FileWindow(shp));
        try {
            records.readHeader(log);
            return records;
        } catch (IOException | RuntimeException e) {
            records.close();
            throw e;
        }
    }

    /** Takes the index for the places of the records; returns its number of records, or nothing if it is unusable. */
    Optional<Long> useIndex(Path shx, LayerLog log) throws IOException {
        try (var index = new FileWindow(shx)) {
            long count = (index.size() - HEADER) / RECORD_HEADER;
            if (index.size() < HEADER
                    || index.at(0, 4).order(ByteOrder.BIG_ENDIAN).getInt() != MAGIC) {
                log.layer(FindingCode.LAYER_ISSUE, "the index " + shx.getFileName() + " is damaged and was not used");
                return Optional.empty();
            }
            if (count > window.size() / RECORD_HEADER) {
                log.layer(
                        FindingCode.LAYER_ISSUE,
                        "the index has " + Counted.of(count, "record")
                                + ", more than the .shp can hold; it was not used");
                return Optional.empty();
            }
            offsets = new int[(int) count];
            for (int record = 0; record < count; record++) {
                offsets[record] = index.at(HEADER + (long) RECORD_HEADER * record, 4)
                        .order(ByteOrder.BIG_ENDIAN)
                        .getInt();
            }
            return Optional.of(count);
        }
    }

    /**
     * Compares the index with the records as they follow one another, which {@link #countInSequence} must have found without a fault.
     *
     * @param count how many records follow one another
     * @return how they differ, in words; empty where they agree
     */
    Optional<String> findDisagreement(long count) throws IOException {
        int[] index = offsets;
        if (index == null) {
            return Optional.empty();
        }
        if (index.length != count) {
            return Optional.of("the index has " + Counted.of(index.length, "record") + ", and the .shp has " + count);
        }
        long at = HEADER;
        int record = 0;
        while (window.holds(at, RECORD_HEADER)) {
            if (2L * (index[record] & 0xFFFFFFFFL) != at) {
                return Optional.of("the index places record " + (record + 1) + " at byte "
                        + 2L * (index[record] & 0xFFFFFFFFL) + ", and the .shp has it at byte " + at);
            }
            at += RECORD_HEADER
                    + 2L * window.at(at + 4, 4).order(ByteOrder.BIG_ENDIAN).getInt();
            record++;
        }
        return Optional.empty();
    }

    /** Goes back to reading each record where the one before it ends. */
    void dropIndex() {
        offsets = null;
    }

    /** Returns how many records follow one another without a fault up to the end of the file, or -1. */
    long countInSequence() throws IOException {
        long count = 0;
        long at = HEADER;
        while (window.holds(at, RECORD_HEADER)) {
            long length = 2L * window.at(at + 4, 4).order(ByteOrder.BIG_ENDIAN).getInt();
            if (length < 4 || !window.holds(at + RECORD_HEADER, length)) {
                return -1;
            }
            at += RECORD_HEADER + length;
            count++;
        }
        return at == window.size() ? count : -1;
    }

    /** Returns whether the file is as long as its header says. */
    boolean isWhole() {
        return statedSize == window.size();
    }

    int fileType() {
        return fileType;
    }

    /** Returns true if another record can be requested. */
    boolean hasNext() {
        int[] index = offsets;
        return index != null ? taken < index.length : window.size() > position;
    }

    /** Returns the content of the next record. */
    ByteBuffer next() throws IOException, FeatureFault {
        int[] index = offsets;
        return index != null ? indexed(index[(int) taken++]) : following();
    }

    @Override
    public void close() throws IOException {
        window.close();
    }

    private void readHeader(LayerLog log) throws IOException {
        if (window.size() < HEADER) {
            throw new InputException(file, "it is shorter than a shapefile's header of 100 bytes", "Export it again");
        }
        ByteBuffer header = window.at(0, HEADER).order(ByteOrder.BIG_ENDIAN);
        int magic = header.getInt();
        if (magic != MAGIC) {
            throw new InputException(
                    file,
                    Integer.reverseBytes(magic) == MAGIC
                            ? "its header has the wrong byte order"
                            : "it does not start with a Shapefile header",
                    "Export it again");
        }
        statedSize = 2L * header.position(24).getInt();
        fileType = header.order(ByteOrder.LITTLE_ENDIAN).position(32).getInt();
        if (statedSize != window.size()) {
            log.layer(
                    FindingCode.LAYER_ISSUE,
                    "the .shp has " + Counted.of(window.size(), "byte") + ", but its header says "
                            + Counted.fixed((double) statedSize, 0)
                            + (statedSize > window.size() ? "; it seems truncated" : ""));
        }
    }

    private ByteBuffer indexed(int offset) throws IOException, FeatureFault {
        long at = 2L * (offset & 0xFFFFFFFFL);
        if (at < HEADER || !window.holds(at, RECORD_HEADER)) {
            throw FeatureFault.unreadable("the index places its record at byte " + at + " of " + window.size());
        }
        long length = 2L * window.at(at + 4, 4).order(ByteOrder.BIG_ENDIAN).getInt();
        if (!window.holds(at + RECORD_HEADER, length)) {
            throw FeatureFault.unreadable(
                    "its record claims " + Counted.of(length, "byte") + " at byte " + at + " of " + window.size());
        }
        bytesTaken += RECORD_HEADER + length;
        if (bytesTaken > 2 * window.size()) {
            throw new InputException(
                    file, "its index (.shx) lists the same records repeatedly", "Remove the index, or repair it");
        }
        return content(at + RECORD_HEADER, length);
    }

    private ByteBuffer following() throws IOException, FeatureFault {
        taken++;
        long at = position;
        if (!window.holds(at, RECORD_HEADER)) {
            position = window.size();
            throw FeatureFault.unreadable("the file ends within the header of its record");
        }
        ByteBuffer header = window.at(at, RECORD_HEADER).order(ByteOrder.BIG_ENDIAN);
        int number = header.getInt();
        long length = 2L * header.getInt();
        boolean fits = length >= 0 && window.holds(at + RECORD_HEADER, length);
        boolean plausible = fits && plausibleType(at, length);
        boolean lengthLies = !fits && statedSize == window.size();
        if (lengthLies || (!plausible && number != lastNumber + 1 && taken > 1)) {
            throw new InputException(
                    file,
                    "record " + taken
                            + " or the one before it is damaged, and without a usable index (.shx) the records after it"
                            + " cannot be found",
                    "Add its .shx, or export it again");
        }
        lastNumber = number;
        if (!fits) {
            position = window.size();
            throw FeatureFault.unreadable("its record claims " + Counted.of(length, "byte") + " at byte " + at + " of "
                    + window.size() + "; nothing after it can be found without an index (.shx)");
        }
        position = at + RECORD_HEADER + length;
        return content(at + RECORD_HEADER, length);
    }

    private boolean plausibleType(long at, long length) throws IOException {
        if (length < 4) {
            return false;
        }
        int type =
                window.at(at + RECORD_HEADER, 4).order(ByteOrder.LITTLE_ENDIAN).getInt();
        return type == 0 || type == fileType;
    }

    private ByteBuffer content(long at, long length) throws IOException, FeatureFault {
        if (length > LONGEST_RECORD) {
            throw FeatureFault.unreadable("its record is longer than " + LONGEST_RECORD + " bytes");
        }
        return window.at(at, (int) length);
    }
}
