package org.spanroom.crs;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Directories of this run's own for what libraries unpack, each made when first needed and removed when the program ends.
 *
 * <p>They have a name that nobody can guess and, where the system knows permissions, are open to their owner only: the temporary
 * place itself is shared by all users of a machine, and another could have laid files in wait there.
 */
public final class PrivateDirectory {
    private PrivateDirectory() {}

    /** Something that a library does when it is first used, and that unpacks files. */
    public interface Unpacking {
        void run() throws Exception;
    }

    /**
     * Makes a directory, names it in a system property that a library looks into, unless something is named there, and lets the
     * library unpack its files. The end of the program waits for that, so that no files come after their removal.
     *
     * <p>A failure of the library is left to show when the library is used.
     */
    public static void unpack(String property, String purpose, Unpacking work) {
        synchronized (PrivateDirectory.class) {
            if (System.getProperty(property) == null) {
                System.setProperty(property, make(purpose).toString());
            }
            try {
                work.run();
            } catch (Exception failure) {
                // Whoever uses the library next will meet it, and knows what it means there.
            }
        }
    }

    private static Path make(String purpose) {
        var removal = new Removal();
        Runtime.getRuntime().addShutdownHook(new Thread(removal, "remove-" + purpose));
        try {
            removal.directory = Files.createTempDirectory("spanroom-" + purpose);
            return removal.directory;
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "no directory can be made in the temporary place " + System.getProperty("java.io.tmpdir"), e);
        }
    }

    /** What is done with a directory when the program ends; known before there is one. */
    private static final class Removal implements Runnable {
        private @Nullable Path directory;

        @Override
        public void run() {
            removeWhatThereIs(this);
        }
    }

    /** Waits until a directory that is being made has its name. */
    private static synchronized void removeWhatThereIs(Removal removal) {
        if (removal.directory != null) {
            remove(removal.directory);
        }
    }

    private static void remove(Path directory) {
        try (Stream<Path> inside = Files.walk(directory)) {
            for (Path path : inside.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(path);
            }
        } catch (IOException e) {
            // Nothing more can be done while the program ends; the system clears its temporary place in time.
        }
    }
}
