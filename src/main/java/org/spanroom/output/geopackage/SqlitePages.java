package org.spanroom.output.geopackage;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Map;
import java.util.TreeMap;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.table.ByteSink;

/**
 * The pages of a SQLite database while no SQLite has it open: new ones go to its end, few old ones are written over.
 *
 * <p>{@link #settle} makes the file whole for SQLite; afterwards more pages may follow.
 */
final class SqlitePages implements AutoCloseable {
    /** What SQLite takes by itself. Small tables, of which there are many, take a page each. */
    static final int SMALL_PAGE_BYTES = 4096;

    /** Wastes less where a table has many rows: a row that does not fit into the rest of a page begins the next. */
    static final int LARGE_PAGE_BYTES = 16_384;

    /** The byte on whose page SQLite takes its locks: it must stay empty (section 1.6). */
    private static final int LOCK_BYTE = 1 << 30;

    /** Where the header counts the pages ("Database File Format", section 1.3, from memory). */
    private static final int PAGE_COUNT_OFFSET = 28;

    private final Path file;
    private final int pageBytes;
    private final ByteSink end;
    private final Map<Integer, byte[]> replaced = new TreeMap<>();
    private int count;

    /** @param pageBytes how large the pages of the file are */
    SqlitePages(Path file, int pageBytes) {
        this.file = file;
        this.pageBytes = pageBytes;
        this.end = ByteSink.appending(file);
        recount();
    }

    int pageBytes() {
        return pageBytes;
    }

    /** Learns how many pages there are now, after SQLite has had the file. */
    void recount() {
        try {
            count = Math.toIntExact(Files.size(file) / pageBytes);
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }

    /** Adds a page and returns its number; the page may be used again. */
    int append(byte[] page) {
        int number = nextNumber();
        if (number != count + 1) {
            end.bytes(new byte[pageBytes], 0, pageBytes);
        }
        end.bytes(page, 0, pageBytes);
        count = number;
        return number;
    }

    /** Returns the number that the next page will get. */
    int nextNumber() {
        return numberAfter(count);
    }

    /** Returns the number of the page that will follow the one of the given number. */
    int numberAfter(int number) {
        return number + 1 == LOCK_BYTE / pageBytes + 1 ? number + 2 : number + 1;
    }

    /** Replaces an old page by another; the page must not be used again. */
    void replace(int number, byte[] page) {
        replaced.put(number, page);
    }

    /** Writes what is still to be written and the count of pages. */
    void settle() {
        end.flush();
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            for (var page : replaced.entrySet()) {
                put(channel, ByteBuffer.wrap(page.getValue()), (page.getKey() - 1L) * pageBytes);
            }
            put(channel, ByteBuffer.allocate(4).putInt(count).flip(), PAGE_COUNT_OFFSET);
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
        replaced.clear();
    }

    @Override
    public void close() {
        end.close();
    }

    private static void put(FileChannel channel, ByteBuffer bytes, long position) throws IOException {
        long at = position;
        while (bytes.hasRemaining()) {
            at += channel.write(bytes, at);
        }
    }
}
