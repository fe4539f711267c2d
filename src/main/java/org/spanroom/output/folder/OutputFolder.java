package org.spanroom.output.folder;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.SecureRandom;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.regex.Pattern;
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

    private static final int MOST_ATTEMPTS = 10;
    private static final SecureRandom NAMES = new SecureRandom();
    private static final int NAMED = 3;

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
        if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        if (!Files.isDirectory(target)) {
            throw new OutputException(target, "exists and is no folder", "Choose another folder.");
        }
        try {
            if (!OwnFiles.isEmpty(target)) {
                checkOurs(target, overwrite, marker);
            }
            if (isMount(target.toRealPath())) {
                throw new OutputException(
                        target,
                        "is where a disk of its own is mounted, which nothing can take the place of",
                        "Choose a folder inside it.");
            }
        } catch (IOException failure) {
            throw OutputException.of(target, failure);
        }
    }

    private static void checkOurs(Path target, boolean overwrite, String marker) throws IOException {
        if (!Files.isRegularFile(target.resolve(marker))) {
            throw new OutputException(
                    target,
                    "exists and holds no results of an earlier run (no " + marker + ")",
                    "Choose another folder.");
        }
        if (!overwrite) {
            throw new OutputException(target, "exists", "Choose another folder, or replace it with --overwrite.");
        }
        List<String> foreign = OwnFiles.foreign(target.toRealPath());
        if (!foreign.isEmpty()) {
            String names = String.join(", ", foreign.subList(0, Math.min(NAMED, foreign.size())));
            String more = foreign.size() > NAMED ? " and " + (foreign.size() - NAMED) + " more" : "";
            throw new OutputException(
                    target,
                    "holds what no run wrote and replacing would lose: " + names + more,
                    "Move it elsewhere (and close the program that has the layers open), or choose another folder.");
        }
    }

    private static boolean isMount(Path folder) throws IOException {
        Path parent = folder.getParent();
        return parent != null && !Files.getFileStore(folder).equals(Files.getFileStore(parent));
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
            madeParents.forEach(OutputFolder::deleteEmpty);
            throw failure;
        }
    }

    private static Path hiddenFolder(Path whole, FolderLock lock, Runnable check) throws IOException {
        Path hidden = freeNameBeside(whole, "writing");
        List<String> left = lock.left();
        lock.note(hidden.getFileName().toString());
        Files.createDirectory(hidden);
        try {
            // Only what the same user left: in a place that many write to, another's notes are no orders.
            if (Files.getOwner(lock.file(), LinkOption.NOFOLLOW_LINKS).equals(Files.getOwner(hidden))) {
                restore(whole, left);
            }
            check.run();
            return hidden;
        } catch (IOException | RuntimeException failure) {
            deleteQuietly(hidden);
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
                remove(old, target);
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
            deleteQuietly(outOfReach());
        }
        lock.release();
        if (!done) {
            madeParents.forEach(OutputFolder::deleteEmpty);
        }
        closed = true;
    }

    /** Gives the hidden folder a name that threads which still write do not know, so that they cannot add files to it. */
    private Path outOfReach() {
        try {
            Path dropped = freeNameBeside(target, "dropped");
            lock.note(dropped.getFileName().toString());
            return Files.move(hidden, dropped, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException failure) {
            return hidden;
        }
    }

    private Path moveAway() throws IOException {
        OwnFiles.force(hidden);
        Path old = freeNameBeside(target, "old");
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

    /** Puts right what a run that was killed left: results that were moved away come back, its unfinished ones go. */
    private static void restore(Path whole, List<String> left) throws IOException {
        Pattern ours =
                Pattern.compile(Pattern.quote("." + whole.getFileName()) + "\\.(?:writing|dropped|old)-[0-9a-f]{1,16}");
        for (String name : left) {
            Path beside = whole.resolveSibling(name);
            if (!ours.matcher(name).matches() || !Files.isDirectory(beside, LinkOption.NOFOLLOW_LINKS)) {
                continue;
            }
            if (!name.contains(".old-")) {
                deleteQuietly(beside);
            } else if (Files.exists(whole, LinkOption.NOFOLLOW_LINKS)) {
                remove(beside, whole);
            } else {
                Files.move(beside, whole, StandardCopyOption.ATOMIC_MOVE);
            }
        }
    }

    /** Removes replaced results. What came to them while the run was at work moves on to the new ones. */
    private static void remove(Path old, Path target) {
        try {
            OwnFiles.delete(old);
            if (!Files.exists(old)) {
                return;
            }
            try (DirectoryStream<Path> rest = Files.newDirectoryStream(old)) {
                for (Path entry : rest) {
                    Files.move(entry, target.resolve(entry.getFileName()));
                }
            }
            Files.delete(old);
        } catch (IOException failure) {
            // The new results are in place; what could not be moved stays where it is.
        }
    }

    /**
     * Returns a name that no run had before: one that a killed run noted and did not come to use may be in its notes still, and what notes
     * name is removed.
     */
    private static Path freeNameBeside(Path target, String purpose) throws IOException {
        for (int attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
            String unique = HexFormat.of().toHexDigits(NAMES.nextLong());
            Path beside = target.resolveSibling("." + target.getFileName() + "." + purpose + "-" + unique);
            if (!Files.exists(beside, LinkOption.NOFOLLOW_LINKS)) {
                return beside;
            }
        }
        throw new IOException("no free name beside it");
    }

    private static void deleteEmpty(Path folder) {
        try {
            if (OwnFiles.isEmpty(folder)) {
                Files.delete(folder);
            }
        } catch (IOException failure) {
            // Somebody else uses it by now, or has removed it.
        }
    }

    /** Deletes what can be deleted; what cannot be deleted is left, since no caller is there to report to. */
    private static void deleteQuietly(Path folder) {
        try {
            Files.walkFileTree(folder, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                    Files.deleteIfExists(file);
                    return FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult postVisitDirectory(Path directory, @Nullable IOException failure)
                        throws IOException {
                    Files.deleteIfExists(directory);
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException failure) {
            // Nothing to be done: the caller is already on its way out, or the results are in place.
        }
    }
}
