package org.spanroom.testing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class ExternalToolTest {
    @Test
    void outputAndExitCodeAreHandedBack() {
        assertThat(ExternalTool.named("sh").run("-c", "echo seen; echo both >&2"))
                .isEqualTo("seen\nboth\n");
        assertThat(ExternalTool.named("sh").tryToRun("-c", "exit 3").exitCode()).isEqualTo(3);
    }

    @Test
    void failureOfTheProgramFailsTheTest() {
        assertThatThrownBy(() -> ExternalTool.named("sh").run("-c", "echo why; exit 1"))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("why");
    }
}
