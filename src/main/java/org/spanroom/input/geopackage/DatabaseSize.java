package org.spanroom.input.geopackage;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.spanroom.finding.InputException;

/**
 * How long a database says that it is. SQLite itself reads one whose end is missing as far as it goes, and takes what is not there for empty pages: rows
 * would be lost, or come back with other values.
 */
final class DatabaseSize {
    // Database header of the file format of SQLite 3 (sqlite.org/fileformat2.html, section 1.3); numbers are
    // big-endian.
    private static final int HEADER_BYTES = 100;
    private static final int PAGE_SIZE_OFFSET = 16;
    private static final int CHANGE_COUNTER_OFFSET = 24;
    private static final int PAGES_OFFSET = 28;
    private static final int VALID_FOR_OFFSET = 92;
    private static final int LARGEST_PAGE_BYTES = 65_536;

    private DatabaseSize() {}

    /**
     * Checks that the file is not shorter than its header says. A header whose count is not valid, as old programs leave it, says nothing.
     *
     * @throws InputException if the file is cut off
     */
    static void demandWhole(Path file) throws IOException {
        long fileBytes = Files.size(file);
        long statedBytes = stated(file);
        if (fileBytes < statedBytes) {
            throw new InputException(
                    file,
                    String.format(
                            Locale.ROOT,
                            "it is cut off: it has %,d bytes, and its header states %,d",
                            fileBytes,
                            statedBytes),
                    "Copy all of it, or export it again.");
        }
    }

    private static long stated(Path file) throws IOException {
        var header = new byte[HEADER_BYTES];
        try (InputStream in = Files.newInputStream(file)) {
            if (in.readNBytes(header, 0, HEADER_BYTES) < HEADER_BYTES) {
                return 0;
            }
        }
        ByteBuffer numbers = ByteBuffer.wrap(header);
        int pageBytes = numbers.getShort(PAGE_SIZE_OFFSET) & 0xFFFF;
        boolean isCounted = numbers.getInt(CHANGE_COUNTER_OFFSET) == numbers.getInt(VALID_FOR_OFFSET);
        long pages = isCounted ? numbers.getInt(PAGES_OFFSET) & 0xFFFF_FFFFL : 0;
        return pages * (pageBytes == 1 ? LARGEST_PAGE_BYTES : pageBytes);
    }
}
