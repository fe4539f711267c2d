package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFolderTest {
    private static final String MARKER = "run.json";

    @TempDir
    Path parent;

    private Path target;

    @BeforeEach
    void nameTarget() {
        target = parent.resolve("results");
    }

    @Test
    void nothingShowsUntilItIsCommitted() throws IOException {
        try (var folder = OutputFolder.create(target, false, MARKER)) {
            Files.writeString(folder.path().resolve(MARKER), "new");
            assertThat(target).doesNotExist();
            folder.commit();
        }

        assertThat(names(parent)).containsExactly("results");
        assertThat(target.resolve(MARKER)).hasContent("new");
    }

    @Test
    void whatIsNotCommittedIsRemovedWithAllThatIsInIt() throws IOException {
        try (var folder = OutputFolder.create(target, false, MARKER)) {
            Files.createDirectories(folder.path().resolve("deep/down"));
            Files.writeString(folder.path().resolve("deep/down/file"), "x");
        }

        assertThat(names(parent)).isEmpty();
    }

    @Test
    void earlierResultsAreReplacedOnlyIfAsked() throws IOException {
        earlierResults();

        assertThatThrownBy(() -> OutputFolder.create(target, false, MARKER))
                .isInstanceOf(OutputException.class)
                .hasMessage(target + ": exists. Choose another folder, or replace it with --overwrite.");
        try (var folder = OutputFolder.create(target, true, MARKER)) {
            Files.writeString(folder.path().resolve(MARKER), "new");
            assertThat(target.resolve(MARKER)).hasContent("old");
            folder.commit();
        }

        assertThat(names(parent)).containsExactly("results");
        assertThat(names(target)).containsExactly(MARKER);
        assertThat(target.resolve(MARKER)).hasContent("new");
    }

    @Test
    void aFolderThatIsNotOursIsNeverReplaced() throws IOException {
        Files.createDirectory(target);
        Files.writeString(target.resolve("thesis.odt"), "years of work");

        for (boolean overwrite : List.of(true, false)) {
            assertThatThrownBy(() -> OutputFolder.create(target, overwrite, MARKER))
                    .isInstanceOf(OutputException.class)
                    .hasMessageContaining("no run.json");
        }
        assertThat(names(parent)).containsExactly("results");
        assertThat(names(target)).containsExactly("thesis.odt");
    }

    @Test
    void anEmptyFolderMayBeFilled() throws IOException {
        Files.createDirectory(target);

        try (var folder = OutputFolder.create(target, false, MARKER)) {
            Files.writeString(folder.path().resolve(MARKER), "new");
            folder.commit();
        }

        assertThat(names(parent)).containsExactly("results");
        assertThat(names(target)).containsExactly(MARKER);
    }

    @Test
    void aLinkToAFolderStaysALink() throws IOException {
        earlierResults();
        Path link = Files.createSymbolicLink(parent.resolve("latest"), target);

        try (var folder = OutputFolder.create(link, true, MARKER)) {
            Files.writeString(folder.path().resolve(MARKER), "new");
            folder.commit();
        }

        assertThat(link).isSymbolicLink();
        assertThat(target.resolve(MARKER)).hasContent("new");
    }

    @Test
    void missingParentsAreMade() {
        try (var folder = OutputFolder.create(parent.resolve("a/b/c"), false, MARKER)) {
            folder.commit();
        }

        assertThat(parent.resolve("a/b/c")).isDirectory();
    }

    @Test
    void aFileOfThatNameOrOnTheWayIsAnErrorWithARemedy() throws IOException {
        Files.writeString(target, "a file");

        assertThatThrownBy(() -> OutputFolder.check(target, true, MARKER))
                .isInstanceOf(OutputException.class)
                .hasMessage(target + ": exists and is no folder. Choose another folder.");
        assertThatThrownBy(() -> OutputFolder.create(target.resolve("below"), false, MARKER))
                .isInstanceOf(OutputException.class)
                .hasMessageStartingWith(target + "/below: ")
                .hasMessageNotContaining("\n");
    }

    @Test
    void whatAnInterruptedRunLeftIsNoHindrance() throws IOException {
        Files.createDirectory(parent.resolve(".results.writing-0"));

        try (var folder = OutputFolder.create(target, false, MARKER)) {
            folder.commit();
        }

        assertThat(target).isDirectory();
        assertThat(parent.resolve(".results.writing-0")).isDirectory();
    }

    @Test
    void checkingLeavesNoTrace() throws IOException {
        assertThatCode(() -> OutputFolder.check(target, false, MARKER)).doesNotThrowAnyException();
        assertThat(names(parent)).isEmpty();
    }

    @Test
    void reasonsOfTheSystemBecomeRemedies() {
        Path file = Path.of("spans.csv");

        assertThat(OutputException.of(file, new IOException("No space left on device")))
                .hasMessage("spans.csv: the disk is full. Free some space or choose a folder on another disk.");
        assertThat(OutputException.of(file, new java.nio.file.AccessDeniedException("spans.csv")))
                .hasMessageContaining("no permission to write here");
        assertThat(new OutputException(file, "two\n lines", "Mend it.")).hasMessage("spans.csv: two lines. Mend it.");
    }

    private void earlierResults() throws IOException {
        Files.createDirectory(target);
        Files.writeString(target.resolve(MARKER), "old");
        Files.writeString(target.resolve("spans.csv"), "old");
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
