package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a recycler pays never pays for the work: a rate by which it would is refused, and not turned into recoveries that cost less than nothing. */
class RecyclingRateTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource({
        "500, 400, 600, 'with what the recycler pays, less than its set-ups at two vaults'",
        "0.15, 0, 4000, 'at the low end of the drawn rates'",
    })
    void aRateThatPaysForTheWorkIsRefused(String value, String low, String high, String problem) throws IOException {
        CommandRun ran = rank(value, low, high);

        assertThat(ran.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(ran.err().lines())
                .singleElement()
                .asString()
                .startsWith("spanroom: rates: the recovery of span '")
                .contains(problem)
                .endsWith(
                        "Check recycling_money_per_kg: its value and its low and high are money per kilogram of innerduct.");
    }

    /** Scrap of high-density polyethylene is worth less than new resin, from memory about 1 to 2 US dollars per kilogram. */
    @ParameterizedTest
    @CsvSource({"0, 0, 0", "0.15, 0, 0.4", "2, 1, 3"})
    void aRateOfScrapIsAccepted(String value, String low, String high) throws IOException {
        assertThat(rank(value, low, high).exitCode()).isZero();
    }

    private CommandRun rank(String value, String low, String high) throws IOException {
        Path config = StreetOfCases.write(folder, "rates: rates.yaml");
        Files.writeString(
                folder.resolve("rates.yaml"),
                "standard:\n  recycling_money_per_kg: {value: %s, low: %s, high: %s, source: \"test\", date: 2027-01}\n"
                        .formatted(value, low, high));
        return CommandRun.of(
                "rank",
                "--config",
                config.toString(),
                "--output",
                folder.resolve("run").toString(),
                "--quiet");
    }
}
