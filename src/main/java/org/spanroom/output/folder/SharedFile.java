package org.spanroom.output.folder;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Duration;

/**
 * A file that several programs add to, one after another. Who adds holds a lock beside the file from before it is read until it is
 * written; what is written is the whole file under another name, which then takes its place. So a program that is killed leaves the file
 * as it was, and nothing that another has added meanwhile is lost.
 */
public final class SharedFile implements AutoCloseable {
    private static final int PAUSE_MS = 20;

    private final Path named;
    private final Path whole;
    private final FolderLock lock;

    private SharedFile(Path named, Path whole, FolderLock lock) {
        this.named = named;
        this.whole = whole;
        this.lock = lock;
    }

    /**
     * Waits for the turn to add to a file, which need not exist; its folder is made.
     *
     * @param patience how long to wait for others
     * @throws OutputException if another program has the turn all that time, or the folder cannot be written
     */
    public static SharedFile take(Path named, Duration patience) {
        try {
            Path whole = real(named.toAbsolutePath());
            long end = System.nanoTime() + patience.toNanos();
            while (true) {
                try {
                    return new SharedFile(named, whole, FolderLock.take(whole, named));
                } catch (OutputException busy) {
                    if (System.nanoTime() > end) {
                        throw new OutputException(
                                named, "another program is adding to this file", "Try again when it has ended.", busy);
                    }
                    pause();
                }
            }
        } catch (IOException failure) {
            throw OutputException.of(named, failure);
        }
    }

    /** A name may be a link to the file in its right place, which is then the one to replace. */
    private static Path real(Path file) throws IOException {
        if (Files.exists(file)) {
            return file.toRealPath();
        }
        if (Files.isSymbolicLink(file)) {
            throw new OutputException(
                    file,
                    "is a link to " + Files.readSymbolicLink(file) + ", which does not exist",
                    "Mount or restore the disk or folder that holds it, or remove the link.");
        }
        Path folder = file.getParent();
        if (folder == null) {
            return file;
        }
        Files.createDirectories(folder);
        return folder.toRealPath().resolve(file.getFileName());
    }

    private static void pause() {
        try {
            Thread.sleep(PAUSE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Adds bytes at the end of the file, which is made where it is missing; they are on the disk when this returns. */
    public void append(byte[] bytes) {
        Path part = whole.resolveSibling("." + whole.getFileName() + ".writing");
        try {
            try {
                Files.deleteIfExists(part);
                if (Files.exists(whole)) {
                    Files.copy(whole, part, StandardCopyOption.COPY_ATTRIBUTES);
                } else {
                    Files.createFile(part);
                }
                write(part, bytes);
                replace(part);
            } finally {
                Files.deleteIfExists(part);
            }
        } catch (IOException failure) {
            throw OutputException.of(named, failure);
        }
    }

    private static void write(Path part, byte[] bytes) throws IOException {
        try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE, StandardOpenOption.APPEND)) {
            ByteBuffer left = ByteBuffer.wrap(bytes);
            while (left.hasRemaining()) {
                channel.write(left);
            }
            channel.force(true);
        }
    }

    private void replace(Path part) throws IOException {
        try {
            Files.move(part, whole, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException onThisDisk) {
            Files.move(part, whole, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    @Override
    public void close() {
        lock.release();
    }
}
