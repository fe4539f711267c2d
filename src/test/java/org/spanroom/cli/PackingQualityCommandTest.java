package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class PackingQualityCommandTest {
    @Test
    void numberOfSectionsOutOfRangeIsAWrongOption() {
        CommandRun none = CommandRun.of("packing-quality", "--sections", "0");

        assertThat(none.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(none.complaint()).startsWith("spanroom: --sections must lie in 1 to");
    }
}
