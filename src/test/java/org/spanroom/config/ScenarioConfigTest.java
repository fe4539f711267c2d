package org.spanroom.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.finding.InputException;
import org.spanroom.model.Term;
import org.spanroom.model.network.ScenarioSettings;

class ScenarioConfigTest {
    @TempDir
    private Path folder;

    private RunConfig read(String text) throws IOException {
        return ConfigReader.read(Files.writeString(folder.resolve("c.yaml"), text.replace("\\n", "\n")));
    }

    @Test
    void asShippedNoContentsAreAssumed() throws IOException {
        assertThat(read("threads: 1").assumed().findNumber(Term.INNERDUCT_COUNT))
                .isEmpty();
        assertThat(read("threads: 1").assumed().findNumber(Term.CABLE_COUNT)).isEmpty();
    }

    /** Whichever of the two places names the typical counts, the other has the same. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "scenarios: {assume_contents: true} | 3 | 2 | 2 | 4",
                "scenarios: {assume_contents: true}\\nassumed: {innerduct_count: 2, cable_count: 1} | 2 | 1 | 2 | 4",
                "assumed: {innerduct_count: 1, cable_count: 1} | 1 | 1 | 1 | 4",
                "assumed: {innerduct_count: 6, cable_count: 6} | 6 | 6 | 2 | 6",
                "scenarios: {assume_contents: true, typical: {innerduct_count: 4}} | 4 | 2 | 2 | 4",
                "scenarios: {assume_contents: true}\\nassumed: {cable_count: 0} | 3 | 0 | 2 | 4",
            })
    void theAssumedCountsAreTheTypicalOnes(String text, int innerducts, int cables, int few, int many)
            throws IOException {
        RunConfig config = read(text);
        ScenarioSettings scenarios = config.scenarios();

        assertThat(config.assumed().findNumber(Term.INNERDUCT_COUNT)).hasValue(innerducts);
        assertThat(config.assumed().findNumber(Term.CABLE_COUNT)).hasValue(cables);
        assertThat(scenarios.typical().innerductCount()).isEqualTo(innerducts);
        assertThat(scenarios.typical().cableCount()).isEqualTo(cables);
        assertThat(scenarios.few().innerductCount()).isEqualTo(few);
        assertThat(scenarios.many().innerductCount()).isEqualTo(many);
        assertThat(scenarios.few().cableCount()).isLessThanOrEqualTo(cables);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "scenarios: {few: {innerduct_count: 5}} | must not decrease from few to typical to many, was 5, 3, 4",
                "scenarios: {many: {cable_count: 1}} | must not decrease from few to typical to many, was 1, 2, 1",
                "scenarios: {few: {chance_ratio: 0.5}} | must add up to 1, was 1.25",
                "scenarios: {typical: {innerduct_count: -1}} | innerduct_count must be from 0 to 300, is",
                "scenarios: {usual: {innerduct_count: 1}} | unknown key 'usual' in scenarios",
                "survey: {vaults: -3} | vaults must be from 0 to 10000, is",
                "survey: {roadway_worth_ratio: 2} | roadway_worth_ratio must",
            })
    void whatCannotBeIsRefusedInOneLine(String text, String complaint) {
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(InputException.class)
                .hasMessageContaining(complaint)
                .hasMessageContaining("c.yaml")
                .message()
                .doesNotContain("\n");
    }
}
