package org.spanroom.output.folder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/**
 * A folder that comes into being whole or not at all: files go to a hidden folder beside it, which takes its name when all
 * are complete.
 *
 * <p>Where a folder of that name exists, it must be empty, or hold results of a run and nothing else, and the user must have
 * allowed to replace it. It is moved away only when the new one is complete and on the disk; between that and the next step,
 * which moves the new one in, a killed program leaves no folder of that name for an instant, and the next run puts the old one
 * back. One run at a time may write a folder ({@link FolderLock}). A program that is stopped removes what it made.
 */
public final class OutputFolder implements AutoCloseable {
    /** Name of the GeoPackage in a folder of results. */
    public static final String GEOPACKAGE = "spanroom.gpkg";

    /** Where this program put results last, for the message when it is stopped. */
    private static final AtomicReference<@Nullable Path> COMMITTED = new AtomicReference<>();

    private final Path target;
    private final Path hidden;
    private final FolderLock lock;
    private final Deque<Path> madeParents;
    private final Thread cleaner;
    private boolean done;
    private boolean closed;

    private OutputFolder(Path target, Path hidden, FolderLock lock, Deque<Path> madeParents, Thread cleaner) {
        this.target = target;
        this.hidden = hidden;
        this.lock = lock;
        this.madeParents = madeParents;
        this.cleaner = cleaner;
    }

    /**
     * Checks that the folder may be written; worth doing before long work.
     *
     * @param marker name of the file by which a folder of ours is known
     */
    public static void check(Path target, boolean overwrite, String marker) {
        FolderCheck.check(target, overwrite, marker);
    }

    /**
     * Begins a folder after {@link #check}: takes the right to write it, restores what a killed run left, and makes the hidden
     * folder, which shows that there is leave and room to write.
     */
    public static OutputFolder create(Path target, boolean overwrite, String marker) {
        var begun = new EndOfProgram();
        var cleaner = new Thread(begun, "output-cleaner");
        try {
            Runtime.getRuntime().addShutdownHook(cleaner);
            return begun.begin(() -> create(target, () -> check(target, overwrite, marker), cleaner));
        } catch (IOException failure) {
            dismiss(cleaner);
            throw OutputException.of(target, failure);
        } catch (IllegalStateException shuttingDown) {
            throw ended(target);
        } catch (RuntimeException failure) {
            dismiss(cleaner);
            throw failure;
        }
    }

    /** Cleans up when the program ends, in whatever way; a folder that is just being begun is waited for. */
    private static final class EndOfProgram implements Runnable {
        private @Nullable OutputFolder folder;

        synchronized OutputFolder begin(Beginning beginning) throws IOException {
            OutputFolder begun = beginning.begin();
            folder = begun;
            return begun;
        }

        @Override
        public synchronized void run() {
            if (folder != null) {
                folder.abandon();
            }
        }
    }

    /** What makes a folder. */
    private interface Beginning {
        OutputFolder begin() throws IOException;
    }

    private static OutputFolder create(Path target, Runnable check, Thread cleaner) throws IOException {
        check.run();
        var madeParents = new ArrayDeque<Path>();
        try {
            Path whole = wholePath(target, madeParents);
            FolderLock lock = FolderLock.take(whole, target);
            try {
                return new OutputFolder(whole, hiddenFolder(whole, lock, check), lock, madeParents, cleaner);
            } catch (IOException | RuntimeException failure) {
                lock.release();
                throw failure;
            }
        } catch (IOException | RuntimeException failure) {
            madeParents.forEach(SiblingFolders::deleteEmpty);
            throw failure;
        }
    }

    private static Path hiddenFolder(Path whole, FolderLock lock, Runnable check) throws IOException {
        Path hidden = SiblingFolders.freeName(whole, "writing");
        List<String> left = lock.left();
        lock.note(hidden.getFileName().toString());
        Files.createDirectory(hidden);
        try {
            // Only what the same user left: in a place that many write to, another's notes are no orders.
            if (Files.getOwner(lock.file(), LinkOption.NOFOLLOW_LINKS).equals(Files.getOwner(hidden))) {
                SiblingFolders.restore(whole, left);
            }
            check.run();
            return hidden;
        } catch (IOException | RuntimeException failure) {
            SiblingFolders.deleteQuietly(hidden);
            throw failure;
        }
    }

    /** Returns the path with links followed, after making the folders above it; those made are added, the lowest first. */
    private static Path wholePath(Path target, Deque<Path> made) throws IOException {
        Path whole = Files.exists(target)
                ? target.toRealPath()
                : target.toAbsolutePath().normalize();
        Path parent = whole.getParent();
        if (parent == null) {
            throw new OutputException(target, "is the root of a disk", "Choose another folder.");
        }
        for (Path above = parent; above != null && !Files.exists(above); above = above.getParent()) {
            made.addLast(above);
        }
        Files.createDirectories(parent);
        return parent.toRealPath().resolve(whole.getFileName());
    }

    /** Returns where the files are to be written until they are complete. */
    public Path path() {
        return hidden;
    }

    /** Returns the folder that this program put in its place last; empty where it has not yet. */
    public static Optional<Path> lastCommitted() {
        return Optional.ofNullable(COMMITTED.get());
    }

    /** Puts the folder in its place. */
    public synchronized void commit() {
        if (closed) {
            throw ended(target);
        }
        try {
            OwnFiles.list(hidden);
            Path old = Files.exists(target) ? moveAway() : null;
            moveIn(old);
            done = true;
            COMMITTED.set(target);
            if (old != null) {
                SiblingFolders.remove(old, target);
            }
        } catch (IOException failure) {
            throw OutputException.of(target, failure);
        }
    }

    /** Removes what was written, unless it was committed, and lets the next run have the folder. */
    @Override
    public void close() {
        abandon();
        dismiss(cleaner);
    }

    private static void dismiss(Thread cleaner) {
        try {
            Runtime.getRuntime().removeShutdownHook(cleaner);
        } catch (IllegalStateException shuttingDown) {
            // The cleaner runs already.
        }
    }

    private static OutputException ended(Path target) {
        return new OutputException(target, "is not written, since the program is ending", "Start it again.");
    }

    private synchronized void abandon() {
        if (closed) {
            return;
        }
        if (!done) {
            SiblingFolders.deleteQuietly(outOfReach());
        }
        lock.release();
        if (!done) {
            madeParents.forEach(SiblingFolders::deleteEmpty);
        }
        closed = true;
    }

    /** Gives the hidden folder a name that threads which still write do not know, so that they cannot add files to it. */
    private Path outOfReach() {
        try {
            Path dropped = SiblingFolders.freeName(target, "dropped");
            lock.note(dropped.getFileName().toString());
            return Files.move(hidden, dropped, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException failure) {
            return hidden;
        }
    }

    private Path moveAway() throws IOException {
        OwnFiles.force(hidden);
        Path old = SiblingFolders.freeName(target, "old");
        lock.note(old.getFileName().toString());
        Files.move(target, old, StandardCopyOption.ATOMIC_MOVE);
        return old;
    }

    private void moveIn(@Nullable Path old) throws IOException {
        try {
            Files.move(hidden, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException failure) {
            if (old != null) {
                putBack(old, failure);
            }
            throw failure;
        }
    }

    /** Where even that fails, the earlier results must not be forgotten where they are. */
    private void putBack(Path old, IOException why) {
        try {
            Files.move(old, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException failure) {
            why.addSuppressed(failure);
            throw new OutputException(
                    target,
                    "the results cannot be moved in, nor the earlier ones back (" + why.getMessage() + ")",
                    "The earlier results are whole in " + old
                            + ": take away what is in the way and give that folder its name back.",
                    why);
        }
    }
}
