package org.spanroom.output.folder;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A kind of text file that the program writes, and by which it knows its own: a file of another kind is never replaced, whatever its name.
 *
 * @param what the kind, with an article, for a message
 * @param mark text that every such file has near its beginning
 */
public record TextKind(String what, String mark) {
    /** More than every file of ours has before its mark. */
    private static final int BEGINNING_BYTES = 4096;

    /**
     * Checks that a file that exists may be replaced. An empty file holds nothing to lose.
     *
     * @throws OutputException if it has content of another kind, or cannot be read
     */
    void demand(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] beginning = in.readNBytes(BEGINNING_BYTES);
            if (beginning.length > 0 && !new String(beginning, StandardCharsets.UTF_8).contains(mark)) {
                throw new OutputException(file, "is not " + what + ", and is never replaced", "Choose another name.");
            }
        } catch (IOException unreadable) {
            throw OutputException.of(file, unreadable);
        }
    }
}
