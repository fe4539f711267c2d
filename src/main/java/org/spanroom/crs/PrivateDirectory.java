package org.spanroom.crs;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/**
 * Directories of this run's own for what libraries unpack, each made when first needed and removed when the program ends.
 *
 * <p>They have a name that nobody can guess and, where the system knows permissions, are open to their owner only: the temporary
 * place itself is shared by all users of a machine, and another could have laid files in wait there.
 */
public final class PrivateDirectory {
    private PrivateDirectory() {}

    /** Makes a directory and names it in a system property that a library looks into, unless something is named there. */
    public static synchronized void nameIn(String property, String purpose) {
        if (System.getProperty(property) == null) {
            System.setProperty(property, make(purpose).toString());
        }
    }

    private static Path make(String purpose) {
        try {
            Path directory = Files.createTempDirectory("spanroom-" + purpose);
            Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(directory), "remove-" + purpose));
            return directory;
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "no directory can be made in the temporary place " + System.getProperty("java.io.tmpdir"), e);
        }
    }

    /** Takes the directory out of the reach of threads that may still write, then removes it. */
    private static void remove(Path directory) {
        try (Stream<Path> inside = Files.walk(outOfReach(directory))) {
            for (Path path : inside.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException e) {
            // Nothing more can be done while the program ends; the system clears its temporary place in time.
        }
    }

    private static Path outOfReach(Path directory) {
        try {
            return Files.move(directory, directory.resolveSibling(directory.getFileName() + "-ended"));
        } catch (IOException e) {
            return directory;
        }
    }
}
