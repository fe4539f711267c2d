package org.spanroom.input;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;

/**
 * Adds up how far the reading of several files has come. Each counts by its bytes, because features differ: a vault is a point, a
 * route has hundreds of vertices.
 */
final class ReadingTally {
    private static final int TOLD_AT_ONCE = 500;

    private final ReadingProgress progress;
    private final Map<String, FileRead> files = new LinkedHashMap<>();

    ReadingTally(ReadingProgress progress) {
        this.progress = progress;
    }

    /** Expects a file that will be read. All must be expected before the first is begun. */
    void expect(String role, Path file) {
        files.put(role + " " + file, new FileRead(sizeOf(file)));
    }

    /** Returns the tally of an expected file. */
    FileRead of(String role, Path file) {
        return Objects.requireNonNull(files.get(role + " " + file), role);
    }

    /** Returns how much of all files has been read, from 0 to 1; NaN where it is unknown for one of them. */
    private double share() {
        double readBytes = 0;
        double allBytes = 0;
        for (FileRead file : files.values()) {
            if (file.sizeBytes > 0) {
                readBytes += file.share * file.sizeBytes;
                allBytes += file.sizeBytes;
            }
        }
        return readBytes / allBytes;
    }

    /** A file whose size cannot be read weighs nothing; its reader reports what is wrong. */
    private static long sizeOf(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            return 0;
        }
    }

    /** How far one file has been read. */
    final class FileRead {
        private final long sizeBytes;
        private volatile double share;

        private FileRead(long sizeBytes) {
            this.sizeBytes = sizeBytes;
        }

        /** Hands features on, and reports progress every few hundred. */
        Consumer<SourceFeature> counting(LayerSource source, Consumer<SourceFeature> reader) {
            var count = new AtomicLong();
            return feature -> {
                reader.accept(feature);
                long features = count.incrementAndGet();
                if (features % TOLD_AT_ONCE == 0) {
                    share = source.shareRead(features);
                    progress.advance(TOLD_AT_ONCE, share());
                }
            };
        }

        /** It has been read to its end. */
        void end() {
            share = 1;
        }
    }
}
