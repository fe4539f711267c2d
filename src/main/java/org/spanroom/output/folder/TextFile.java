package org.spanroom.output.folder;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** A text file of the user's choice, in UTF-8, that comes into being whole or not at all. */
public final class TextFile {
    private TextFile() {}

    /** What writes the text, part by part. */
    public interface Source {
        void write(Writer out) throws IOException;
    }

    /**
     * Checks that the file may be written; worth doing before long work.
     *
     * @param kind what is written: only a file of the same kind is replaced
     * @throws OutputException if it exists and may not be replaced, or is no file
     */
    public static void check(Path file, TextKind kind, boolean overwrite) {
        if (Files.isDirectory(file)) {
            throw new OutputException(file, "is a folder", "Name a file.");
        }
        if (!overwrite && Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new OutputException(file, "exists", "Choose another name, or replace it with --overwrite.");
        }
        if (Files.isRegularFile(file)) {
            kind.demand(file);
        }
    }

    /** Writes the file, first under another name beside it, never through a link that somebody may have laid there. */
    public static void write(Path file, String text, TextKind kind, boolean overwrite) {
        write(file, out -> out.write(text), kind, overwrite);
    }

    /** Writes the file as above, its text part by part. */
    public static void write(Path file, Source source, TextKind kind, boolean overwrite) {
        check(file, kind, overwrite);
        Path whole = file.toAbsolutePath();
        Path part = whole.resolveSibling("." + whole.getFileName() + ".writing");
        try {
            try {
                Files.deleteIfExists(part);
                try (Writer out = Files.newBufferedWriter(part, StandardOpenOption.CREATE_NEW)) {
                    source.write(out);
                }
                Files.move(part, whole, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }
}
