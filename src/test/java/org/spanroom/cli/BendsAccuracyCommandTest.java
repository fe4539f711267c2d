package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class BendsAccuracyCommandTest {
    @Test
    void theFiguresAreThoseOfTheSeed() {
        CommandRun first = CommandRun.of("bends-accuracy", "--spans", "60", "--seed", "5");
        CommandRun again = CommandRun.of("bends-accuracy", "--spans", "60", "--seed", "5");
        CommandRun other = CommandRun.of("bends-accuracy", "--spans", "60", "--seed", "6");

        assertThat(first.exitCode()).isZero();
        assertThat(first.out()).containsPattern("(?m)^all +60 ").isEqualTo(again.out());
        assertThat(other.out()).isNotEqualTo(first.out());
    }

    @Test
    void aCountOfSpansThatIsNoneIsAWrongOption() {
        CommandRun none = CommandRun.of("bends-accuracy", "--spans", "0");

        assertThat(none.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(none.complaint()).startsWith("spanroom: --spans must lie in 1 to 10000000.");
    }
}
