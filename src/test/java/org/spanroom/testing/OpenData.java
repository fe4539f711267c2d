package org.spanroom.testing;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Public data that the project did not make and does not carry, in the folder that the system property {@code spanroom.openData}
 * names ({@code mvn verify -Dspanroom.openData=FOLDER}). Without the property these tests are skipped: there is no default, so that
 * no test reads outside the project unasked.
 */
public final class OpenData {
    private static final String PROPERTY = "spanroom.openData";

    private OpenData() {}

    /** Returns a file or folder of the open data, or ends the test as skipped where the data is not there. */
    public static Path at(String name) {
        String folder = System.getProperty(PROPERTY, "");
        assumeTrue(!folder.isBlank(), "open data: the property " + PROPERTY + " names no folder; test skipped");
        Path place = Path.of(folder).resolve(name);
        assumeTrue(Files.exists(place), "open data: " + place + " does not exist; test skipped");
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
}
