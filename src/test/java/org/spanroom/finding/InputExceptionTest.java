package org.spanroom.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** One line that a person can act on, whatever the file is called and says. */
class InputExceptionTest {
    /** A config that names "." gives a path without any letter. */
    @Test
    void theCurrentFolderIsNamed() {
        assertThat(new InputException(Path.of(""), "it is a folder", "Name the file in it."))
                .hasMessage(".: it is a folder. Name the file in it.");
    }

    @Test
    void aProblemOfSeveralLinesIsOneLine() {
        assertThat(new InputException(Path.of("a.csv"), "it says 'x\n  y'", "Fix it."))
                .hasMessage("a.csv: it says 'x y'. Fix it.");
    }
}
