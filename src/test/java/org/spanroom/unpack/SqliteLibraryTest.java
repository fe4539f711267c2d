package org.spanroom.unpack;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.testing.ForkedRun;
import org.sqlite.SQLiteJDBCLoader;

/** Where the native library is written: once, in a directory of the program's own, and never under a fixed name in one that a user names. */
class SqliteLibraryTest {
    private static final String DIRECTORY = "org.sqlite.tmpdir";

    @TempDir
    private Path folder;

    /** Loads the library by two threads at once, and notes what is then where it was written. */
    static final class Loading {
        private Loading() {}

        public static void main(String[] args) throws Exception {
            var other = new Thread(SqliteLibrary::load);
            other.start();
            SqliteLibrary.load();
            other.join();
            try (Stream<Path> files = Files.list(Path.of(System.getProperty(DIRECTORY)))) {
                List<String> names = files.map(file -> file.getFileName().toString())
                        .filter(name -> name.contains("sqlite"))
                        .toList();
                Files.writeString(Path.of(args[0]), SQLiteJDBCLoader.isNativeMode() + "\n" + String.join("\n", names));
            }
        }
    }

    private List<String> noted(List<String> java) throws IOException {
        Path note = folder.resolve("note");
        ForkedRun run = ForkedRun.start(List.of(), java, Loading.class, folder, List.of(note.toString()));
        assertThat(run.exitCode()).as(run.err()).isZero();
        return Files.readAllLines(note);
    }

    @Test
    void theLibraryIsWrittenOnce() throws IOException {
        assertThat(noted(List.of())).containsExactly("true", System.mapLibraryName("sqlitejdbc"));
    }

    @Test
    void aDirectoryOfTheUsersIsLeftToTheLoader() throws IOException {
        Path own = Files.createDirectory(folder.resolve("own"));

        assertThat(noted(List.of("-D" + DIRECTORY + "=" + own)))
                .startsWith("true")
                .doesNotContain(System.mapLibraryName("sqlitejdbc"));
        assertThat(own.resolve(System.mapLibraryName("sqlitejdbc"))).doesNotExist();
    }
}
