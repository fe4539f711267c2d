package org.spanroom.unpack;

import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * What shows that the program lives which a directory belongs to: a file in it that the system keeps locked for just as long,
 * however the program ends.
 */
final class ProcessLock implements Closeable {
    static final String NAME = ".in-use";
    private static final String BEFORE_IT_IS_LOCKED = ".in-use-soon";

    private final FileChannel channel;

    private ProcessLock(FileChannel channel) {
        this.channel = channel;
    }

    /**
     * Puts the sign into a directory of this program's own. The file has its name only once it is locked, so that no other process finds it
     * unlocked. Where the file system has no locks there is none, and no other process may judge the directory.
     */
    static Optional<ProcessLock> put(Path directory) {
        Path soon = directory.resolve(BEFORE_IT_IS_LOCKED);
        try {
            Optional<ProcessLock> sign = lock(soon, StandardOpenOption.CREATE_NEW);
            if (sign.isPresent()) {
                Files.move(soon, directory.resolve(NAME), StandardCopyOption.ATOMIC_MOVE);
            }
            return sign;
        } catch (IOException noSign) {
            return Optional.empty();
        }
    }

    /** Takes over the sign of a program that has ended; empty while it lives, or where that cannot be known. */
    static Optional<ProcessLock> takeOver(Path directory) throws IOException {
        return lock(directory.resolve(NAME), StandardOpenOption.READ);
    }

    private static Optional<ProcessLock> lock(Path file, StandardOpenOption how) throws IOException {
        FileChannel channel = FileChannel.open(file, how, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
        try {
            FileLock lock = channel.tryLock();
            if (lock != null) {
                return Optional.of(new ProcessLock(channel));
            }
        } catch (IOException | OverlappingFileLockException noLock) {
            // No locks here, or this very program has it.
        }
        channel.close();
        return Optional.empty();
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
