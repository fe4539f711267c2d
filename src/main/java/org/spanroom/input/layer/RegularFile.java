package org.spanroom.input.layer;

import java.nio.file.Files;
import java.nio.file.Path;
import org.spanroom.finding.InputException;

/** What every input of data must be: a file that can be read more than once, as a digest and a reader do. */
public final class RegularFile {
    private RegularFile() {}

    /**
     * Refuses what is there under a name and no file with bytes of its own; nothing of it is opened.
     *
     * @throws InputException saying what it is, if it is a folder, a pipe or a device
     */
    public static void demandIfThere(Path file) {
        if (Files.isDirectory(file)) {
            throw new InputException(file, "it is a folder", "Name the file in it.");
        }
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw new InputException(
                    file,
                    "it is not a regular file but a pipe or a device, which can be read only once",
                    "Save its contents as a file and name that.");
        }
    }
}
