package org.spanroom.output;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;
import org.spanroom.model.SpreadsheetText;
import org.spanroom.model.fieldwork.BookRow;
import org.spanroom.output.columns.FieldworkColumns;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.folder.SharedFile;
import org.spanroom.output.table.Column;

/** The file of a field book, as rows are added to it: CSV in UTF-8, with commas and a header. */
public final class FieldBookFile implements AutoCloseable {
    /** Longer than any other takes to add a report. */
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private static final List<String> RESULTS = List.of(RunJson.FILE, ".results");

    private final Path file;
    private final SharedFile shared;

    private FieldBookFile(Path file, SharedFile shared) {
        this.file = file;
        this.shared = shared;
    }

    /**
     * Waits for the turn to add to a book. No other program adds to it until this is closed.
     *
     * @throws OutputException if the book lies in a folder of results, or another program has the turn for long
     */
    public static FieldBookFile open(Path file) {
        demandOutsideResults(file);
        return new FieldBookFile(file, SharedFile.take(file, PATIENCE));
    }

    /**
     * Demands that a book is outside all results folders, since the next run replaces those.
     *
     * @throws OutputException if it does
     */
    public static void demandOutsideResults(Path file) {
        if (Files.isDirectory(file)) {
            throw new OutputException(file, "is a folder", "Name the file of the field book.");
        }
        Path whole = file.toAbsolutePath().normalize();
        for (Path folder = whole.getParent(); folder != null; folder = folder.getParent()) {
            if (RESULTS.stream().map(folder::resolve).anyMatch(Files::exists)) {
                throw new OutputException(
                        file,
                        "lies in a folder of results (" + folder + "), which a later run may replace",
                        "Keep the field book beside the config.");
            }
        }
    }

    /** Adds rows; a book that is missing is made, with its header. */
    public void append(List<BookRow> rows) {
        var text = new StringBuilder();
        if (!Files.exists(file)) {
            text.append(line(FieldworkColumns.FIELD_BOOK.columns().stream()
                    .map(Column::name)
                    .toList()));
        } else if (!endsWithLineBreak()) {
            text.append('\n');
        }
        rows.forEach(row -> text.append(line(cells(row))));
        shared.append(text.toString().getBytes(StandardCharsets.UTF_8));
    }

    private boolean endsWithLineBreak() {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
            ByteBuffer last = ByteBuffer.allocate(1);
            return channel.size() == 0 || (channel.read(last, channel.size() - 1) == 1 && last.get(0) == '\n');
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }

    private static List<String> cells(BookRow row) {
        return FieldworkColumns.FIELD_BOOK.columns().stream()
                .map(column -> column.value(row).map(String::valueOf).orElse(""))
                .toList();
    }

    /** Returns a row in the form of RFC 4180. */
    private static String line(List<String> cells) {
        return cells.stream()
                        .map(SpreadsheetText::guarded)
                        .map(FieldBookFile::quoted)
                        .collect(Collectors.joining(",")) + "\n";
    }

    private static String quoted(String cell) {
        boolean mustBeQuoted = cell.chars().anyMatch(c -> ",\"\n\r".indexOf(c) >= 0);
        return mustBeQuoted ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }

    @Override
    public void close() {
        shared.close();
    }
}
