package org.spanroom.output.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A shared file may be a link to its right place, which must be there. */
class SharedFileTest {
    @TempDir
    Path folder;

    private static void add(Path file, String line) {
        try (SharedFile shared = SharedFile.take(file, Duration.ZERO)) {
            shared.append(line.getBytes(StandardCharsets.UTF_8));
        }
    }

    private Path link(Path target) throws IOException {
        Path link = folder.resolve("book.csv");
        try {
            return Files.createSymbolicLink(link, target);
        } catch (UnsupportedOperationException | IOException notHere) {
            assumeThat(notHere).as("links may be made here").isNull();
            throw notHere;
        }
    }

    @Test
    void whatALinkNamesIsAddedTo() throws IOException {
        Path book = folder.resolve("real.csv");
        Path link = link(book.getFileName());
        add(book, "one\n");

        add(link, "two\n");

        assertThat(book).hasContent("one\ntwo\n");
        assertThat(link).isSymbolicLink();
    }

    /** A disk that is not mounted: a new file in place of the link would begin the numbers of the book again. */
    @Test
    void aLinkToNothingIsRefusedAndKept() throws IOException {
        Path link = link(Path.of("not-mounted", "book.csv"));

        assertThatThrownBy(() -> add(link, "one\n"))
                .isInstanceOf(OutputException.class)
                .hasMessageContaining("book.csv")
                .hasMessageContaining("which does not exist");

        assertThat(link).isSymbolicLink();
        assertThat(folder.resolve("not-mounted")).doesNotExist();
    }
}
