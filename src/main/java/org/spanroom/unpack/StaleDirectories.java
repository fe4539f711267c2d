package org.spanroom.unpack;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The directories that programs left in the temporary place because they were killed.
 *
 * <p>Removed is a directory that has a name as we give it, the owner of this program's own one and its permissions, is no link,
 * and whose {@link ProcessLock} shows that the program has ended; one without a sign, of a version before there were any, after a week.
 * Links inside are removed and not followed. What cannot be removed stays, for the system to clear.
 */
final class StaleDirectories {
    private static final Pattern OURS = Pattern.compile("spanroom-(?:epsg|sqlite|solver)\\d{1,20}");
    private static final Duration WITHOUT_SIGN = Duration.ofDays(7);

    private StaleDirectories() {}

    /**
     * Removes them.
     *
     * @param own a directory that this program has just made
     * @param living the directories of this program, which must not even be looked into: to close a file gives up its locks
     */
    static void remove(Path own, Set<Path> living) {
        Path place = own.toAbsolutePath().getParent();
        if (place == null) {
            return;
        }
        try (DirectoryStream<Path> beside = Files.newDirectoryStream(place, "spanroom-*")) {
            for (Path directory : beside) {
                if (OURS.matcher(String.valueOf(directory.getFileName())).matches() && !living.contains(directory)) {
                    removeIfLeft(directory, own);
                }
            }
        } catch (IOException | DirectoryIteratorException unreadable) {
            // Nothing that this run needs.
        }
    }

    private static void removeIfLeft(Path directory, Path own) {
        try {
            if (!isLikeOurs(directory, own)) {
                return;
            }
            Optional<ProcessLock> ended = ProcessLock.takeOver(directory);
            if (ended.isPresent()) {
                delete(directory);
                ended.get().close();
            }
        } catch (NoSuchFileException noSign) {
            removeIfOld(directory);
        } catch (IOException | UnsupportedOperationException failure) {
            // Not ours after all, or another run is removing it.
        }
    }

    private static boolean isLikeOurs(Path directory, Path own) throws IOException {
        return Files.isDirectory(directory, LinkOption.NOFOLLOW_LINKS)
                && Files.getOwner(directory, LinkOption.NOFOLLOW_LINKS)
                        .equals(Files.getOwner(own, LinkOption.NOFOLLOW_LINKS))
                && permissions(directory).equals(permissions(own));
    }

    private static String permissions(Path directory) throws IOException {
        try {
            return PosixFilePermissions.toString(Files.getPosixFilePermissions(directory, LinkOption.NOFOLLOW_LINKS));
        } catch (UnsupportedOperationException noneHere) {
            return "";
        }
    }

    private static void removeIfOld(Path directory) {
        try {
            Instant changed = Files.getLastModifiedTime(directory, LinkOption.NOFOLLOW_LINKS)
                    .toInstant();
            if (changed.isBefore(Instant.now().minus(WITHOUT_SIGN))) {
                delete(directory);
            }
        } catch (IOException failure) {
            // Another run is removing it, or it cannot be removed.
        }
    }

    /** Deletes a directory with all in it, the sign last; links are deleted and not followed. */
    static void delete(Path directory) throws IOException {
        Path sign = directory.resolve(ProcessLock.NAME);
        Files.walkFileTree(directory, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                if (!file.equals(sign)) {
                    Files.deleteIfExists(file);
                }
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path visited, @Nullable IOException failure) throws IOException {
                if (visited.equals(directory)) {
                    Files.deleteIfExists(sign);
                }
                Files.deleteIfExists(visited);
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
