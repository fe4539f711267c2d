package org.spanroom.output.folder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A text file replaces only one of its own kind, whatever the user names. */
class TextFileTest {
    private static final TextKind KIND = new TextKind("a list of ours", "# Ours");

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"theirs", "\u0000\u0001\u00ff", "<svg/>", "# ours"})
    void aFileOfAnotherKindStays(String content) throws IOException {
        Path file = Files.write(folder.resolve("x"), content.getBytes(StandardCharsets.ISO_8859_1));

        assertThatThrownBy(() -> TextFile.write(file, "# Ours\n", KIND, true))
                .isInstanceOf(OutputException.class)
                .hasMessage(file + ": is not a list of ours, and is never replaced. Choose another name.");
        assertThat(Files.readAllBytes(file)).isEqualTo(content.getBytes(StandardCharsets.ISO_8859_1));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "# Ours\nold", "\n\n# Ours"})
    void anEmptyFileAndOneOfTheKindAreReplaced(String content) throws IOException {
        Path file = Files.writeString(folder.resolve("x"), content);

        TextFile.write(file, "# Ours\nnew", KIND, true);

        assertThat(file).hasContent("# Ours\nnew");
    }

    /** A link to a file of another kind is refused as the file itself would be, and both stay. */
    @Test
    void aLinkToAnotherKindStays() throws IOException {
        Path theirs = Files.writeString(folder.resolve("theirs"), "theirs");
        Path link = Files.createSymbolicLink(folder.resolve("link"), theirs);

        assertThatThrownBy(() -> TextFile.write(link, "# Ours\n", KIND, true)).isInstanceOf(OutputException.class);
        assertThat(link).isSymbolicLink();
        assertThat(theirs).hasContent("theirs");
    }
}
