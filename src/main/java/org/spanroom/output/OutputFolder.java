package org.spanroom.output;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A folder that comes into being whole or not at all: files go to a hidden folder beside it, which takes its name when all
 * are complete.
 *
 * <p>Where a folder of that name exists, it must be empty, or be one of ours (it holds the marker file) and the user must have
 * allowed to replace it. It is moved away only when the new one is complete, and moved back should the last step fail. An
 * interrupted program removes its hidden folder too.
 */
public final class OutputFolder implements AutoCloseable {
    private static final int MOST_ATTEMPTS = 1000;

    private final Path target;
    private final Path hidden;
    private final Thread cleaner;
    private boolean done;

    private OutputFolder(Path target, Path hidden) {
        this.target = target;
        this.hidden = hidden;
        this.cleaner = new Thread(() -> deleteQuietly(hidden), "output-cleaner");
        Runtime.getRuntime().addShutdownHook(cleaner);
    }

    /**
     * Checks that the folder may be written; worth doing before long work.
     *
     * @param marker name of the file by which a folder of ours is known
     */
    public static void check(Path target, boolean overwrite, String marker) {
        if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS) || isEmptyFolder(target)) {
            return;
        }
        if (!Files.isDirectory(target)) {
            throw new OutputException(target, "exists and is no folder", "Choose another folder.");
        }
        if (!Files.isRegularFile(target.resolve(marker))) {
            throw new OutputException(
                    target,
                    "exists and holds no results of an earlier run (no " + marker + ")",
                    "Choose another folder.");
        }
        if (!overwrite) {
            throw new OutputException(target, "exists", "Choose another folder, or replace it with --overwrite.");
        }
    }

    /** Begins a folder after {@link #check}. */
    public static OutputFolder create(Path target, boolean overwrite, String marker) {
        check(target, overwrite, marker);
        try {
            Path whole = Files.exists(target)
                    ? target.toRealPath()
                    : target.toAbsolutePath().normalize();
            Path parent = whole.getParent();
            if (parent == null) {
                throw new OutputException(target, "is the root of a disk", "Choose another folder.");
            }
            Files.createDirectories(parent);
            return new OutputFolder(whole, Files.createDirectory(freeNameBeside(whole, "writing")));
        } catch (IOException failure) {
            throw OutputException.of(target, failure);
        }
    }

    /** Returns where the files are to be written until they are complete. */
    public Path path() {
        return hidden;
    }

    /** Puts the folder in its place. */
    public void commit() {
        try {
            Path old = Files.exists(target) ? moveAway() : null;
            moveIn(old);
            done = true;
            if (old != null) {
                deleteQuietly(old);
            }
        } catch (IOException failure) {
            throw OutputException.of(target, failure);
        }
    }

    /** Removes what was written, unless it was committed. */
    @Override
    public void close() {
        if (!done) {
            deleteQuietly(hidden);
        }
        try {
            Runtime.getRuntime().removeShutdownHook(cleaner);
        } catch (IllegalStateException shuttingDown) {
            // The cleaner runs already.
        }
    }

    private Path moveAway() throws IOException {
        Path old = freeNameBeside(target, "old");
        Files.move(target, old, StandardCopyOption.ATOMIC_MOVE);
        return old;
    }

    private void moveIn(@Nullable Path old) throws IOException {
        try {
            Files.move(hidden, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException failure) {
            if (old != null) {
                Files.move(old, target, StandardCopyOption.ATOMIC_MOVE);
            }
            throw failure;
        }
    }

    private static Path freeNameBeside(Path target, String purpose) throws IOException {
        for (int attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
            Path beside = target.resolveSibling("." + target.getFileName() + "." + purpose + "-" + attempt);
            if (!Files.exists(beside, LinkOption.NOFOLLOW_LINKS)) {
                return beside;
            }
        }
        throw new IOException("too many folders left over from interrupted runs");
    }

    private static boolean isEmptyFolder(Path path) {
        if (!Files.isDirectory(path)) {
            return false;
        }
        try (Stream<Path> entries = Files.list(path)) {
            return entries.findAny().isEmpty();
        } catch (IOException failure) {
            throw OutputException.of(path, failure);
        }
    }

    /** Deletes what can be deleted; what cannot is left, for lack of anyone to tell. */
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
