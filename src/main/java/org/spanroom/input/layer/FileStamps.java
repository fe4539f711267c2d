package org.spanroom.input.layer;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.spanroom.finding.InputException;

/**
 * What a system says of a file and of those that belong to it, without reading them: taken before they are read and compared
 * afterwards, so that the digest that goes into the record is that of the bytes that were used.
 */
public final class FileStamps {
    private final Map<Path, Stamp> stamps;

    private FileStamps(Map<Path, Stamp> stamps) {
        this.stamps = stamps;
    }

    /**
     * What is compared of one file.
     *
     * @param key the system's own name of the file, which another file in its place does not have
     * @param changed when the system last changed anything about it, which nothing can set back; empty where a system does not say
     */
    private record Stamp(long sizeBytes, FileTime modified, Optional<Object> key, Optional<Object> changed) {}

    /** Takes the stamps of a layer's files, whichever of them are there. */
    public static FileStamps ofLayer(Path file) {
        return of(FileDigest.files(file));
    }

    /** Takes the stamp of one file. */
    public static FileStamps of(Path file) {
        return of(List.of(file));
    }

    private static FileStamps of(List<Path> files) {
        var stamps = new TreeMap<Path, Stamp>();
        files.forEach(file -> find(file).ifPresent(stamp -> stamps.put(file, stamp)));
        return new FileStamps(stamps);
    }

    private static Optional<Stamp> find(Path file) {
        try {
            var seen = Files.readAttributes(file, BasicFileAttributes.class);
            return Optional.of(new Stamp(
                    seen.size(), seen.lastModifiedTime(), Optional.ofNullable(seen.fileKey()), changed(file)));
        } catch (IOException missing) {
            // The reader of the file reports that better.
            return Optional.empty();
        }
    }

    private static Optional<Object> changed(Path file) throws IOException {
        try {
            return Optional.ofNullable(Files.getAttribute(file, "unix:ctime"));
        } catch (UnsupportedOperationException | IllegalArgumentException notHere) {
            return Optional.empty();
        }
    }

    /**
     * Demands that nothing has changed since the stamps were taken.
     *
     * @throws InputException naming the file that has
     */
    public void demandUnchanged() {
        for (Map.Entry<Path, Stamp> stamp : stamps.entrySet()) {
            if (!find(stamp.getKey()).equals(Optional.of(stamp.getValue()))) {
                throw new InputException(
                        stamp.getKey(),
                        "it was changed or replaced while it was read",
                        "Run again once the program that writes it has ended.");
            }
        }
    }
}
