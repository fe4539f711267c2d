package org.spanroom.testing;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Public data that the project did not make and does not carry: the folder {@code open-data} beside the project, in
 * {@code ../shared} or where the system property {@code spanroom.shared} points.
 */
public final class OpenData {
    private OpenData() {}

    /** Returns a file or folder of the open data, or ends the test as skipped where the data is not there. */
    public static Path at(String name) {
        Path place = root().resolve(name);
        assumeTrue(Files.exists(place), "open data " + place + " is not there; test skipped");
        return place;
    }

    /** Returns the files below a folder with one of the endings, in order of name; skips where the data is not there. */
    public static List<Path> filesBelow(String folder, String... endings) {
        try (Stream<Path> files = Files.walk(at(folder))) {
            return files.filter(Files::isRegularFile)
                    .filter(file -> Stream.of(endings)
                            .anyMatch(ending -> file.getFileName().toString().endsWith(ending)))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path root() {
        return Path.of(System.getProperty("spanroom.shared", "../shared"), "open-data");
    }
}
