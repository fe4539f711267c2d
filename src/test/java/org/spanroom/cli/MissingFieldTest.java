package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A mapped field, a kept field or a column that a file lacks ends the run: all that it should hold would be assumed silently. */
class MissingFieldTest {
    @TempDir
    Path folder;

    /** In each layer an optional and a necessary field. */
    @ParameterizedTest(name = "{1} for {0}")
    @CsvSource({"length_ft, lengthft", "duct_id, dct_id", "vault_id, valt_id", "water, watr"})
    void aFieldThatNoFileHasIsNamedWithTheNearest(String field, String wrong) throws IOException {
        copyDemo();
        Path config = folder.resolve("spanroom.yaml");
        String text = Files.readString(config);
        String changed = text.replaceAll("(: |field: )" + field + "(?=[,}\\s])", "$1" + wrong);
        assertThat(changed).isNotEqualTo(text);
        Files.writeString(config, changed);

        CommandRun run = CommandRun.of("check", "--config", config.toString());

        assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.INPUT);
        assertThat(run.complaint().lines())
                .singleElement()
                .asString()
                .contains("it has no field '" + wrong + "'", "did you mean '" + field + "'?");
    }

    @ParameterizedTest
    @CsvSource({"duct, dukt", "kind, knd"})
    void aContentsTableWithoutItsColumnsIsRefused(String column, String wrong) throws IOException {
        copyDemo();
        Path table = folder.resolve("contents.csv");
        Files.writeString(table, Files.readString(table).replaceFirst("\\b" + column + "\\b", wrong));

        CommandRun run = CommandRun.of(
                "check", "--config", folder.resolve("spanroom.yaml").toString());

        assertThat(run.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(run.complaint()).contains("contents.csv: the contents table needs the columns duct and kind", wrong);
    }

    private void copyDemo() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("sample-gis"))) {
            for (Path file : files.toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
    }
}
