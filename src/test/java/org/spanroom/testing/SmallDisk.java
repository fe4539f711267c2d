package org.spanroom.testing;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** A disk in memory, as small as requested; where the user may not mount one, the test is skipped and says so. */
public final class SmallDisk implements AutoCloseable {
    private final Path place;

    private SmallDisk(Path place) {
        this.place = place;
    }

    /** Mounts a disk on a folder that is made for it. */
    public static SmallDisk mount(Path place, long kibibytes) throws IOException {
        Files.createDirectories(place);
        boolean mounted = run("mount", "-t", "tmpfs", "-o", "size=" + kibibytes + "k", "tmpfs", place.toString());
        assumeTrue(mounted, "no leave to mount a small disk; test skipped");
        return new SmallDisk(place);
    }

    /** Allows no further writing to it. */
    public void makeReadOnly() {
        if (!run("mount", "-o", "remount,ro", place.toString())) {
            throw new AssertionError("cannot remount " + place);
        }
    }

    @Override
    public void close() {
        run("umount", "-l", place.toString());
    }

    private static boolean run(String... command) {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return process.waitFor(20, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
