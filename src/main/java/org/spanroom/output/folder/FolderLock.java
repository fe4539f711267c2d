package org.spanroom.output.folder;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/**
 * The right to write one folder, which one run at a time has: a file beside the folder that the system keeps locked for as long
 * as the run lives, however it ends.
 *
 * <p>The file records which process has it and which folders it made; what a killed run left behind is known from it. Where the
 * file system has no locks the right is given without one, and nothing that was left behind is touched.
 */
final class FolderLock {
    /** Beyond any text that the file will hold, since some systems forbid reading what is locked. */
    private static final long LOCKED_BYTE = 1L << 40;

    private static final int MOST_ATTEMPTS = 10;
    private static final int PAUSE_MS = 20;
    private static final int LONGEST_TEXT = 1 << 16;
    private static final String ENDED = "ended";
    private static final Pattern PROCESS = Pattern.compile("process (\\d{1,10})");

    /** Closing any second channel to a file would give up the lock of the first, so this program asks itself beforehand. */
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

    private final Path file;
    private final FileChannel channel;
    private final boolean locked;
    private final List<String> found;
    private boolean released;

    private FolderLock(Path file, FileChannel channel, boolean locked, String found) {
        this.file = file;
        this.channel = channel;
        this.locked = locked;
        this.found = found.lines().toList();
    }

    /**
     * Takes the right to write a folder.
     *
     * @param whole the folder's real path
     * @param named as the user named it
     * @throws OutputException if another run has it
     */
    static FolderLock take(Path whole, Path named) throws IOException {
        Path file = whole.resolveSibling("." + whole.getFileName() + ".lock");
        if (!HELD.add(file)) {
            throw busy(named, "process " + ProcessHandle.current().pid());
        }
        try {
            return noted(open(file, named));
        } catch (IOException | RuntimeException failure) {
            HELD.remove(file);
            throw failure;
        }
    }

    private static FolderLock noted(FolderLock lock) throws IOException {
        try {
            lock.note("process " + ProcessHandle.current().pid());
            return lock;
        } catch (IOException failure) {
            if (lock.found.isEmpty()) {
                lock.release();
            } else {
                lock.channel.close();
            }
            throw failure;
        }
    }

    private static FolderLock open(Path file, Path named) throws IOException {
        for (int attempt = 1; ; attempt++) {
            FileChannel channel = FileChannel.open(
                    file,
                    StandardOpenOption.CREATE,
                    StandardOpenOption.READ,
                    StandardOpenOption.WRITE,
                    LinkOption.NOFOLLOW_LINKS);
            Optional<Boolean> locked = tryLock(channel);
            String text = text(channel);
            if (locked.isEmpty()) {
                channel.close();
                throw busy(named, text);
            }
            // A file so marked is about to be removed or was already, and a lock on it would keep no other process out.
            // If
            // it
            // stays, its owner was killed in that instant, and it serves like any other.
            if (!text.endsWith(ENDED + "\n") || attempt == MOST_ATTEMPTS) {
                return new FolderLock(file, channel, locked.get(), text);
            }
            channel.close();
            pause();
        }
    }

    /** Returns whether the file is locked now; empty if another has the lock, false where there are no locks. */
    private static Optional<Boolean> tryLock(FileChannel channel) {
        try {
            FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
            return lock == null ? Optional.empty() : Optional.of(true);
        } catch (OverlappingFileLockException ofThisProgram) {
            return Optional.empty();
        } catch (IOException noLocksHere) {
            return Optional.of(false);
        }
    }

    private static OutputException busy(Path named, String text) {
        String who = PROCESS.matcher(text)
                .results()
                .reduce((earlier, later) -> later)
                .map(process -> " (process " + process.group(1) + ")")
                .orElse("");
        return new OutputException(
                named,
                "another run is writing into this folder" + who,
                "Wait until it has ended, or choose another folder.");
    }

    /** Returns what a run that could not clean up had noted; empty where it is not certain that it ended. */
    List<String> left() {
        return locked ? found : List.of();
    }

    /** Returns the file that carries the lock. */
    Path file() {
        return file;
    }

    /** Adds a line, on the disk before this returns. */
    void note(String line) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap((line + "\n").getBytes(StandardCharsets.UTF_8));
        long at = channel.size();
        while (bytes.hasRemaining()) {
            at += channel.write(bytes, at);
        }
        channel.force(false);
    }

    /** Gives the right back when all that was noted is gone; a second call does nothing. */
    void release() {
        if (released) {
            return;
        }
        released = true;
        try (channel) {
            try {
                note(ENDED);
            } finally {
                Files.deleteIfExists(file);
            }
        } catch (IOException failure) {
            // The lock ends with the program at the latest, and the next run takes the file over.
        } finally {
            HELD.remove(file);
        }
    }

    private static String text(FileChannel channel) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate((int) Math.min(channel.size(), LONGEST_TEXT));
        while (bytes.hasRemaining() && channel.read(bytes, bytes.position()) > 0) {
            // Reads on.
        }
        return new String(bytes.array(), 0, bytes.position(), StandardCharsets.UTF_8);
    }

    private static void pause() {
        try {
            Thread.sleep(PAUSE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
