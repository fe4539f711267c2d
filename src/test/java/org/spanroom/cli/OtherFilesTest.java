package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A layer's file on the command line is another file than the config's: what the config says of its own file does not apply to it. */
class OtherFilesTest {
    @TempDir
    private Path folder;

    /** Returns the config with statements that fit none of the layers' files. */
    private Path withForeignStatements() throws IOException {
        String statements = "crs: 'EPSG:2263', axis_order: north_first, layer: none";
        String text = Files.readString(StreetOfCases.write(folder))
                .replace(
                        "    fields: {duct:",
                        "    " + statements.replace(", ", "\n    ") + "\n    keep: [inner]\n    fields: {duct:")
                .replace("vaults: {file:", "vaults: {" + statements + ", file:");
        return Files.writeString(folder.resolve("foreign.yaml"), text);
    }

    @Test
    void statementsOfTheConfigsFilesApplyToThoseOnly() throws IOException {
        Path config = withForeignStatements();
        Path out = folder.resolve("run");

        CommandRun asStated = CommandRun.of("check", "--config", config.toString());
        CommandRun others = CommandRun.of(
                "rank",
                "--config",
                config.toString(),
                "--output",
                out.toString(),
                "--routes",
                folder.resolve("ducts.geojson").toString(),
                "--vaults",
                folder.resolve("vaults.geojson").toString());

        assertThat(asStated.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(others.exitCode()).as(others.err()).isZero();
        JsonNode inputs =
                new ObjectMapper().readTree(out.resolve("run.json").toFile()).at("/config/inputs");
        for (String layer : new String[] {"routes", "vaults"}) {
            assertThat(inputs.path(layer).has("crs")).isFalse();
            assertThat(inputs.path(layer).has("layer")).isFalse();
            assertThat(inputs.path(layer).path("axis_order").asText()).isEqualTo("east_first");
            assertThat(inputs.path(layer).path("fields").isEmpty()).isFalse();
        }
        assertThat(inputs.at("/routes/keep/0").asText()).isEqualTo("inner");
    }

    @Test
    void theOptionOfTheReferenceSystemAppliesToAllLayers() throws IOException {
        Path config = withForeignStatements();
        Path out = folder.resolve("run");

        CommandRun ranked = CommandRun.of(
                "rank",
                "--config",
                config.toString(),
                "--output",
                out.toString(),
                "--crs",
                "OGC:CRS84",
                "--routes",
                folder.resolve("ducts.geojson").toString(),
                "--vaults",
                folder.resolve("vaults.geojson").toString());

        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        JsonNode inputs =
                new ObjectMapper().readTree(out.resolve("run.json").toFile()).at("/config/inputs");
        assertThat(inputs.at("/routes/crs").asText()).isEqualTo("OGC:CRS84");
        assertThat(inputs.at("/vaults/crs").asText()).isEqualTo("OGC:CRS84");
    }
}
