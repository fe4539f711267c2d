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
    @CsvSource({
        "length_ft, lengthft",
        "duct_id, dct_id",
        "vault_id, valt_id",
        "water, watr",
        "zone_id, zon_id",
        "zone_type, zonetype",
        "until, untill"
    })
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

    /** A column of the contents table that only a column of almost its name can be. */
    @ParameterizedTest
    @CsvSource({
        "outside_diameter, outside_diam",
        "outside_diameter, outside_diameter_in",
        "outside_diameter, Outside Diameter (in)",
        "outside_diameter, outsidediameter",
        "in_service, inservice",
        "item, itme",
        "mass, mass_lb",
        "sdr, sdr_no",
        "catalog, catalogue",
        "inside, insde"
    })
    void aMisspelledColumnOfTheContentsTableIsNamedWithTheNearest(String column, String wrong) throws IOException {
        assertThat(complaintOnContents(column, wrong))
                .contains("contents.csv: it has no column '" + column + "'; did you mean '" + column + "' by '" + wrong
                        + "'?");
    }

    /** No rule of spelling leads from these to the column that they stand for, and without it all sizes would be assumed. */
    @ParameterizedTest
    @CsvSource({"outer_diam", "od", "diameter", "DIA"})
    void sizesUnderAnotherNameAreNotMissingSizes(String wrong) throws IOException {
        assertThat(complaintOnContents("outside_diameter", wrong))
                .contains("contents.csv: it has no column outside_diameter", "other columns: " + wrong, "Rename");
    }

    /** As for routes: one file of several that lacks a field is a finding, all of them are a mistake. */
    @ParameterizedTest
    @CsvSource({"true", "false"})
    void ofSeveralZoneFilesOneMustHaveTheField(boolean oneHasIt) throws IOException {
        copyDemo();
        String zone = """
                {"type":"FeatureCollection","features":[{"type":"Feature","properties":{%s},"geometry":
                {"type":"Polygon","coordinates":[[[-30,40],[-29.99,40],[-29.99,40.01],[-30,40]]]}}]}""";
        String whole = "\"zone_id\":\"%s\",\"zone_type\":\"rail\",\"title\":\"T\",\"starts\":null";
        Files.writeString(folder.resolve("a.geojson"), zone.formatted(whole.formatted("A") + ",\"untl\":null"));
        Files.writeString(
                folder.resolve("b.geojson"),
                zone.formatted(whole.formatted("B") + (oneHasIt ? ",\"until\":null" : "")));
        Path config = folder.resolve("spanroom.yaml");
        Files.writeString(config, Files.readString(config).replace("file: zones.gpkg", "file: [a.geojson, b.geojson]"));

        CommandRun run = CommandRun.of("rank", "--config", config.toString(), "--output", folder + "/out");

        assertThat(run.exitCode()).as(run.err()).isEqualTo(oneHasIt ? ExitCode.OK : ExitCode.INPUT);
        if (oneHasIt) {
            assertThat(Files.readString(folder.resolve("out/findings.csv")))
                    .contains("the file has no field 'until', which the config names for zone_until");
        } else {
            assertThat(run.complaint())
                    .contains("a.geojson: it has no field 'until' (mapped to zone_until); did you mean 'untl'?");
        }
    }

    /** Returns the one line in which the demo is refused after a column of its contents table was renamed. */
    private String complaintOnContents(String column, String wrong) throws IOException {
        copyDemo();
        Path table = folder.resolve("contents.csv");
        String text = Files.readString(table);
        String changed = text.replaceFirst("\\b" + column + "\\b", wrong);
        assertThat(changed).isNotEqualTo(text);
        Files.writeString(table, changed);

        CommandRun run = CommandRun.of(
                "check", "--config", folder.resolve("spanroom.yaml").toString());

        assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.INPUT);
        assertThat(run.complaint().lines()).hasSize(1);
        return run.complaint();
    }

    private void copyDemo() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("sample-gis"))) {
            for (Path file : files.toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
    }
}
