package org.spanroom.output.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.testing.SmallDisk;

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
        assertThat(names(target)).containsExactly(".results", MARKER);
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
        assertThat(names(target)).containsExactly(".results", MARKER);
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

    /** Links of symlink(7): to a name that is not there, and to itself. */
    @ParameterizedTest
    @ValueSource(strings = {"nothing", "results"})
    void aLinkThatLeadsToNothingIsNamed(String name) throws IOException {
        Files.createSymbolicLink(target, parent.resolve(name));

        assertThatThrownBy(() -> OutputFolder.check(target, true, MARKER))
                .isInstanceOf(OutputException.class)
                .hasMessage(target + ": is a link that leads to nothing. Remove the link, or choose another folder.");
    }

    /** The file system proc(5) has a folder, and takes no file. */
    @Test
    void aFolderThatIsThereIsNotSaidToBeMissing() {
        Path proc = Path.of("/proc");
        assumeTrue(Files.isDirectory(proc.resolve("self")));

        assertThatThrownBy(() -> OutputFolder.create(proc.resolve("x"), false, MARKER))
                .isInstanceOf(OutputException.class)
                .hasMessageStartingWith("/proc/x: ")
                .hasMessageContaining("nothing can be written into the folder that it is in")
                .hasMessageNotContaining("does not exist");
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
    void aHiddenFolderThatNoRunNotedIsLeftAlone() throws IOException {
        Files.createDirectory(parent.resolve(".results.writing-0"));

        try (var folder = OutputFolder.create(target, false, MARKER)) {
            folder.commit();
        }

        assertThat(target).isDirectory();
        assertThat(parent.resolve(".results.writing-0")).isDirectory();
    }

    /** The state that a program leaves which is killed between the two last steps. */
    @Test
    void resultsThatAKilledRunHadMovedAwayComeBack() throws IOException {
        Files.createDirectory(parent.resolve(".results.old-0"));
        Files.writeString(parent.resolve(".results.old-0").resolve(MARKER), "old");
        Files.createDirectory(parent.resolve(".results.writing-0"));
        Files.writeString(parent.resolve(".results.writing-0/spans.csv"), "half");
        Files.writeString(parent.resolve(".results.lock"), "process 1\n.results.writing-0\n.results.old-0\n");

        assertThatThrownBy(() -> OutputFolder.create(target, false, MARKER)).hasMessageContaining("--overwrite");

        assertThat(names(parent)).containsExactly("results");
        assertThat(target.resolve(MARKER)).hasContent("old");
    }

    /** The state that a program leaves which is killed after the last step, before it has cleared away. */
    @Test
    void resultsThatAKilledRunHadReplacedGoButNothingElseDoes() throws IOException {
        earlierResults();
        Path old = Files.createDirectory(parent.resolve(".results.old-0"));
        Files.writeString(old.resolve(MARKER), "older");
        Files.writeString(old.resolve("notes.txt"), "mine");
        Files.writeString(parent.resolve(".results.lock"), ".results.old-0\n");

        OutputFolder.create(parent.resolve("other"), false, MARKER).close();
        assertThat(old).isDirectory();
        assertThatThrownBy(() -> OutputFolder.create(target, true, MARKER)).hasMessageContaining("notes.txt");

        assertThat(names(parent)).containsExactly("results");
        assertThat(target.resolve(MARKER)).hasContent("old");
        assertThat(target.resolve("notes.txt")).hasContent("mine");
    }

    @Test
    void notesOfAStrangerAreNoOrders() throws IOException {
        Path outside = Files.createDirectory(parent.resolve("outside"));
        Files.writeString(outside.resolve("thesis.odt"), "years of work");
        Files.createSymbolicLink(parent.resolve(".results.writing-0"), outside);
        Files.writeString(
                parent.resolve(".results.lock"),
                "outside\n../" + parent.getFileName() + "/outside\n.results.writing-0\n" + outside + "\n");

        OutputFolder.create(target, false, MARKER).close();

        assertThat(names(outside)).containsExactly("thesis.odt");
        assertThat(names(parent)).containsExactly(".results.writing-0", "outside");
    }

    @Test
    void aListThatIsNoTextIsNamedAsSomethingForeign() throws IOException {
        results("first");
        Files.write(target.resolve(".results"), new byte[] {(byte) 0xC3, 0x28, (byte) 0xFF, 0, 10});

        assertThatThrownBy(() -> OutputFolder.create(target, true, MARKER))
                .isInstanceOf(OutputException.class)
                .hasMessageContaining("holds what no run wrote and replacing would lose: .results");
    }

    @Test
    void whatNoRunWroteIsNamedAndNothingIsReplaced() throws IOException {
        results("first");
        Files.writeString(target.resolve("spans.qml"), "a style");
        Files.createDirectory(target.resolve("photos"));

        assertThatThrownBy(() -> OutputFolder.create(target, true, MARKER))
                .isInstanceOf(OutputException.class)
                .hasMessageStartingWith(
                        target + ": holds what no run wrote and replacing would lose: photos/, spans.qml. Move it");

        assertThat(names(parent)).containsExactly("results");
        assertThat(target.resolve(MARKER)).hasContent("first");
        assertThat(target.resolve("spans.qml")).hasContent("a style");
    }

    @Test
    void aLinkUnderOneOfOurNamesIsForeignToo() throws IOException {
        results("first");
        Path elsewhere = Files.writeString(parent.resolve("elsewhere.csv"), "mine");
        Files.delete(target.resolve("sheets/one.svg"));
        Files.createSymbolicLink(target.resolve("sheets/one.svg"), elsewhere);

        assertThatThrownBy(() -> OutputFolder.create(target, true, MARKER)).hasMessageContaining("one.svg (no plain");
    }

    @Test
    void aFileThatComesWhileTheRunIsAtWorkMovesOnToTheNewResults() throws IOException {
        results("first");

        try (var folder = OutputFolder.create(target, true, MARKER)) {
            Files.writeString(target.resolve("notes.txt"), "mine");
            Files.writeString(folder.path().resolve(MARKER), "second");
            folder.commit();
        }

        assertThat(names(parent)).containsExactly("results");
        assertThat(target.resolve(MARKER)).hasContent("second");
        assertThat(names(target)).containsExactly(".results", "notes.txt", MARKER);
        assertThat(target.resolve("notes.txt")).hasContent("mine");
    }

    @Test
    void oneRunAtATimeWritesAFolderUnderWhateverName() throws IOException {
        Path link = Files.createSymbolicLink(parent.resolve("latest"), parent);

        try (var folder = OutputFolder.create(target, false, MARKER)) {
            assertThat(folder.path()).isDirectory();
            assertThatThrownBy(() -> OutputFolder.create(link.resolve("results"), false, MARKER))
                    .isInstanceOf(OutputException.class)
                    .hasMessageContaining("another run is writing into this folder (process ");
        }
        OutputFolder.create(target, false, MARKER).close();

        assertThat(names(parent)).containsExactly("latest");
    }

    @Test
    void foldersMadeOnTheWayGoAgainWithTheRunThatNeededThem() throws IOException {
        OutputFolder.create(parent.resolve("a/b/c"), false, MARKER).close();

        assertThat(names(parent)).isEmpty();
    }

    @Test
    void aFullDiskIsToldBeforeTheWork() throws IOException {
        try (var disk = SmallDisk.mount(parent.resolve("disk"), 4)) {
            assertThatThrownBy(() -> {
                        Files.write(parent.resolve("disk/filler"), new byte[1 << 20]);
                    })
                    .isInstanceOf(IOException.class);
            assertThatThrownBy(() -> OutputFolder.create(parent.resolve("disk/results"), false, MARKER))
                    .isInstanceOf(OutputException.class)
                    .hasMessageContaining("the disk is full");
            assertThat(names(parent.resolve("disk"))).containsExactly("filler");

            disk.makeReadOnly();
            assertThatThrownBy(() -> OutputFolder.create(parent.resolve("disk/results"), false, MARKER))
                    .isInstanceOf(OutputException.class)
                    .hasMessageContaining("Read-only");
            assertThatThrownBy(() -> OutputFolder.check(parent.resolve("disk"), true, "filler"))
                    .isInstanceOf(OutputException.class);
        }
    }

    @Test
    void theRootOfAMountedDiskIsRefusedBeforeTheWork() throws IOException {
        try (var disk = SmallDisk.mount(parent.resolve("disk"), 64)) {
            assertThat(disk).isNotNull();
            assertThatThrownBy(() -> OutputFolder.create(parent.resolve("disk"), false, MARKER))
                    .hasMessageContaining("where a disk of its own is mounted");
            assertThat(names(parent.resolve("disk"))).isEmpty();
        }
    }

    private void results(String content) throws IOException {
        try (var folder = OutputFolder.create(target, false, MARKER)) {
            Files.writeString(folder.path().resolve(MARKER), content);
            Files.createDirectory(folder.path().resolve("sheets"));
            Files.writeString(folder.path().resolve("sheets/one.svg"), content);
            folder.commit();
        }
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
        assertThat(new OutputException(file, "two\n lines", "Fix it.")).hasMessage("spans.csv: two lines. Fix it.");
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
