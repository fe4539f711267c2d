package org.spanroom.input.shapefile;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.FeatureFault;
import org.spanroom.input.layer.LayerLog;

/** The values of those memo fields of a table that are wanted; the file with the texts is opened for the first of them. */
final class MemoTexts implements Closeable {
    private final Optional<Path> path;
    private final DbfTable table;
    private final LayerLog log;
    private final Set<String> reported = new TreeSet<>();
    private boolean opened;
    private @Nullable MemoFile file;

    /**
     * Makes the texts of a table.
     *
     * @param path the file beside it, if there is one
     */
    MemoTexts(Optional<Path> path, DbfTable table, LayerLog log) {
        this.path = path;
        this.table = table;
        this.log = log;
    }

    /**
     * Returns the text that a field refers to; null for none, or one that cannot be read, which is reported.
     *
     * @param feature counted from 1
     */
    @Nullable
    Object value(DbfField field, ByteBuffer row, long feature) {
        if (!field.isText()) {
            report(field, "refers to data in another file that are not text; they were treated as missing");
            return null;
        }
        long block = field.memoBlock(row);
        if (block == 0) {
            return null;
        }
        MemoFile texts = file(field);
        try {
            return texts == null ? null : decoded(texts.text(block));
        } catch (FeatureFault fault) {
            log.odd(FindingCode.LAYER_ISSUE, feature, named(field) + ": " + fault.detail());
        } catch (IOException e) {
            report(field, "refers to texts in a file that cannot be read: " + e.getMessage());
        }
        return null;
    }

    private @Nullable MemoFile file(DbfField field) {
        if (path.isEmpty()) {
            report(field, "refers to texts in a .dbt or .fpt that is missing; they were treated as missing");
        } else if (!opened) {
            opened = true;
            try {
                file = MemoFile.open(path.get(), table.version());
            } catch (IOException e) {
                report(field, "refers to texts in a file that cannot be read: " + e.getMessage());
            }
        }
        return file;
    }

    /** Returns a text without the blanks at its end; null if nothing is left. */
    private @Nullable Object decoded(byte[] bytes) {
        int length = bytes.length;
        while (length > 0 && bytes[length - 1] >= 0 && bytes[length - 1] <= ' ') {
            length--;
        }
        return length == 0 ? null : table.encoding().decode(bytes, 0, length);
    }

    private void report(DbfField field, String text) {
        if (reported.add(field.name())) {
            log.layer(FindingCode.LAYER_ISSUE, named(field) + " " + text);
        }
    }

    private static String named(DbfField field) {
        return "the field \"" + field.name() + "\"";
    }

    @Override
    public void close() throws IOException {
        if (file != null) {
            file.close();
        }
    }
}
