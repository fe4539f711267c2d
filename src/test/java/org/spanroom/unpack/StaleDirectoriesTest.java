package org.spanroom.unpack;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.testing.FolderState;
import org.spanroom.testing.ForkedRun;

/** Directories in the temporary place: those of programs that were killed go, all others stay. */
class StaleDirectoriesTest {
    @TempDir
    Path folder;

    private Path place;
    private Path own;

    @BeforeEach
    void makePlace() throws IOException {
        place = Files.createDirectories(folder.resolve("tmp"));
        own = made("spanroom-epsg1");
    }

    /** A program that makes a directory of its own, and lives until it is killed. */
    static final class Living {
        private Living() {}

        public static void main(String[] args) throws InterruptedException {
            PrivateDirectory.unpack(
                    "none", "epsg", () -> Files.writeString(Path.of(System.getProperty("none"), "unpacked"), "x"));
            Thread.sleep(args.length == 0 ? 120_000 : 0);
        }
    }

    private ForkedRun start(String... arguments) {
        return ForkedRun.start(
                List.of(), List.of("-Djava.io.tmpdir=" + place), Living.class, folder, List.of(arguments));
    }

    private static Path made(Path place, String name) throws IOException {
        Path directory = Files.createDirectory(place.resolve(name));
        Files.setPosixFilePermissions(directory, PosixFilePermissions.fromString("rwx------"));
        Files.writeString(Files.createDirectory(directory.resolve("deeper")).resolve("file"), "x");
        return directory;
    }

    private Path made(String name) throws IOException {
        return made(place, name);
    }

    private static void age(Path directory, int days) throws IOException {
        Files.setLastModifiedTime(directory, FileTime.from(Instant.now().minus(Duration.ofDays(days))));
    }

    private void remove() {
        StaleDirectories.remove(own, Set.of(own));
    }

    @Test
    void whatAKilledProgramLeftIsRemovedByTheNextAndNotThatOfALivingOne() throws IOException {
        Files.delete(own.resolve("deeper/file"));
        Files.delete(own.resolve("deeper"));
        Files.delete(own);
        try (ForkedRun killed = start()) {
            killed.await(() -> unpacked() == 1);
            killed.signal("KILL");
            assertThat(killed.exitCode()).isEqualTo(137);
        }
        assertThat(FolderState.names(place)).hasSize(1);
        String left = FolderState.names(place).iterator().next();

        try (ForkedRun living = start()) {
            living.await(() -> unpacked() == 1 && !Files.exists(place.resolve(left)));
            try (ForkedRun next = start("end")) {
                assertThat(next.exitCode()).as(next.err()).isZero();
            }
            assertThat(unpacked()).isOne();
            living.signal("TERM");
            assertThat(living.exitCode()).isEqualTo(143);
        }
        assertThat(FolderState.names(place)).isEmpty();
    }

    private int unpacked() {
        try {
            return (int) FolderState.names(place).stream()
                    .filter(name -> Files.exists(place.resolve(name).resolve("unpacked")))
                    .count();
        } catch (UncheckedIOException e) {
            return -1;
        }
    }

    @Test
    void oneWithoutASignGoesAfterAWeekOnly() throws IOException {
        age(made("spanroom-sqlite22"), 8);
        age(made("spanroom-epsg33"), 6);

        remove();

        assertThat(FolderState.names(place)).containsExactlyInAnyOrder("spanroom-epsg1", "spanroom-epsg33");
    }

    @Test
    void othersStayHoweverOldTheyAre() throws IOException {
        for (String name : List.of("spanroom-epsg", "spanroom-epsg2x", "spanroom-other3", "xspanroom-epsg4")) {
            age(made(name), 400);
        }
        Path open = made("spanroom-epsg5");
        Files.setPosixFilePermissions(open, PosixFilePermissions.fromString("rwxrwxrwx"));
        age(open, 400);
        Files.writeString(place.resolve("spanroom-epsg6"), "a file");

        remove();

        assertThat(FolderState.names(place)).hasSize(7);
    }

    @Test
    void linksAreNotFollowed() throws IOException {
        Path elsewhere = made(folder, "elsewhere");
        Files.createSymbolicLink(place.resolve("spanroom-epsg7"), elsewhere);
        Path left = made("spanroom-epsg8");
        Files.createSymbolicLink(left.resolve("link"), elsewhere);
        Files.writeString(left.resolve(ProcessLock.NAME), "");

        remove();

        assertThat(left).doesNotExist();
        assertThat(Files.isSymbolicLink(place.resolve("spanroom-epsg7"))).isTrue();
        assertThat(elsewhere.resolve("deeper/file")).exists();
    }

    @Test
    void aSignThatIsALinkIsNoSign() throws IOException {
        Path left = made("spanroom-epsg9");
        Files.createSymbolicLink(left.resolve(ProcessLock.NAME), Files.writeString(folder.resolve("sign"), ""));

        remove();

        assertThat(left).exists();
    }
}
