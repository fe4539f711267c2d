package org.spanroom.unpack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.LockSupport;
import org.jspecify.annotations.Nullable;

/**
 * Directories of this run's own for what libraries unpack, each made when first needed and removed when the program ends.
 *
 * <p>They have a name that cannot be guessed and, where the system knows permissions, are open to their owner only: the temporary
 * place itself is shared by all users of a machine, and another could have laid files in wait there. Those of programs that were
 * killed are removed with the first one that is made.
 */
public final class PrivateDirectory {
    private static final int PROBE_BYTES = 4 << 20;
    private static final int REMOVAL_ATTEMPTS = 5;
    /** Enough to walk the directory and delete its files. */
    private static final int REMOVAL_BYTES = 256 << 10;

    private static final long ATTEMPT_NANOS = 50_000_000;
    private static final Map<String, Turn> UNPACKING = new ConcurrentHashMap<>();
    private static final Set<Path> OWN = new TreeSet<>();

    private PrivateDirectory() {}

    /** One thread at a time unpacks for a property, and none once its directory is removed. */
    private static final class Turn {
        private boolean removed;
    }

    /** Something that a library does when it is first used, and that unpacks files. */
    public interface Unpacking {
        void run() throws Exception;
    }

    /**
     * Makes a directory, names it in a system property that a library looks into, unless something is named there, and lets the
     * library unpack its files, unless another thread does so for the same property, which is waited for. The end of the program waits
     * for the work too, so that no files come after their removal.
     *
     * <p>A failure of the library is left to show when the library is used, unless there is no room to unpack anything.
     *
     * @throws TemporaryFolderException if the temporary folder cannot be used
     */
    public static void unpack(String property, String purpose, Unpacking work) {
        Turn turn = UNPACKING.computeIfAbsent(property, any -> new Turn());
        synchronized (turn) {
            if (turn.removed) {
                throw new IllegalStateException("the program is ending");
            }
            if (System.getProperty(property) == null) {
                System.setProperty(property, make(purpose, turn).toString());
            }
            try {
                work.run();
            } catch (Exception | LinkageError failure) {
                // The next use of the library fails in the same way, where the meaning is known.
                demandRoom(Path.of(System.getProperty(property)));
            }
        }
    }

    /** Writes as much as a small library takes, and removes it. */
    private static void demandRoom(Path directory) {
        Path probe = directory.resolve("probe");
        try {
            try {
                Files.write(probe, new byte[PROBE_BYTES]);
            } finally {
                Files.deleteIfExists(probe);
            }
        } catch (IOException full) {
            throw new TemporaryFolderException(full);
        }
    }

    /** For one thread at a time: a directory is on the list of our own before any other is looked into. */
    private static synchronized Path make(String purpose, Turn turn) {
        var removal = new Removal(turn);
        Runtime.getRuntime().addShutdownHook(new Thread(removal, "remove-" + purpose));
        try {
            Path made = Files.createTempDirectory("spanroom-" + purpose);
            removal.directory = made;
            Path directory = made.toAbsolutePath();
            removal.sign = ProcessLock.put(directory);
            OWN.add(directory);
            if (OWN.size() == 1) {
                StaleDirectories.remove(directory, OWN);
            }
            return directory;
        } catch (IOException e) {
            throw new TemporaryFolderException(e);
        }
    }

    /** What is done with a directory when the program ends; known before there is one. */
    private static final class Removal implements Runnable {
        private final Turn turn;
        /** Given back before the directory is removed, since the memory may be full of what the program ends with. */
        @SuppressWarnings("UnusedVariable") // holds memory
        private byte @Nullable [] reserve = new byte[REMOVAL_BYTES];

        private @Nullable Path directory;
        private Optional<ProcessLock> sign = Optional.empty();

        private Removal(Turn turn) {
            this.turn = turn;
        }

        @Override
        public void run() {
            synchronized (turn) {
                turn.removed = true;
                reserve = null;
                if (directory != null) {
                    removeInTheEnd(directory);
                }
            }
        }

        /** Where another thread takes the reserve, it soon meets its own end. */
        private void removeInTheEnd(Path known) {
            for (int attempt = 1; attempt <= REMOVAL_ATTEMPTS; attempt++) {
                try {
                    remove(known);
                    return;
                } catch (OutOfMemoryError full) {
                    LockSupport.parkNanos(ATTEMPT_NANOS);
                }
            }
        }

        /** The sign stays locked until all else is gone, so that no other program removes the same files. */
        private void remove(Path known) {
            try {
                StaleDirectories.delete(known);
                if (sign.isPresent()) {
                    sign.get().close();
                }
            } catch (IOException | RuntimeException | LinkageError e) {
                // Nothing more can be done while the program ends; the next one tries again.
            }
        }
    }
}
