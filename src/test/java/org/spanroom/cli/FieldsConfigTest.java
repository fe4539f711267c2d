package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.ContentsConfig;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/** {@code check --fields --write}: from somebody's files to a config that a run takes. */
class FieldsConfigTest {
    private static final int LINES = 30;

    @TempDir
    Path folder;

    private Path routes;
    private Path vaults;

    @BeforeEach
    void writeLayers() throws IOException {
        Files.createDirectories(folder.resolve("their data"));
        routes = folder.resolve("their data/mains.geojson");
        vaults = folder.resolve("their data/holes.geojson");
        Files.writeString(routes, lines(""));
        Files.writeString(vaults, points());
    }

    private static String lines(String crs) {
        var text = new StringBuilder("{\"type\":\"FeatureCollection\"," + crs + "\"features\":[");
        for (int n = 0; n < LINES; n++) {
            text.append(n == 0 ? "" : ",")
                    .append("""
                            {"type":"Feature","properties":{"OBJECTID":%d,"FACILITYID":"L%d","FROMMH":"M%d","TOMH":"M%d","DIAM":100,
                            "SUBDUCTS":3,"CABLES":2,"OWNER":%d,"INSTALLDATE":915148800000},
                            "geometry":{"type":"LineString","coordinates":[[%s,47],[%s,47]]}}""".formatted(n + 1, n, n, n + 1, n % 2, 5 + n * 0.001, 5 + (n + 1) * 0.001));
        }
        return text + "]}";
    }

    private static String points() {
        var text = new StringBuilder("{\"type\":\"FeatureCollection\",\"features\":[");
        for (int n = 0; n <= LINES; n++) {
            text.append(n == 0 ? "" : ",").append("""
                            {"type":"Feature","properties":{"OBJECTID":%d,"FACILITYID":"M%d"},
                            "geometry":{"type":"Point","coordinates":[%s,47]}}""".formatted(n + 1, n, 5 + n * 0.001));
        }
        return text + "]}";
    }

    private CommandRun write(Path yaml, String... more) {
        var args = new ArrayList<>(List.of(
                "check",
                "--fields",
                "--routes",
                routes.toString(),
                "--vaults",
                vaults.toString(),
                "--write",
                yaml.toString()));
        args.addAll(List.of(more));
        return CommandRun.of(args.toArray(String[]::new));
    }

    @Test
    void theConfigNamesItsFilesAndFieldsAndNothingElse() throws IOException {
        Files.createDirectories(folder.resolve("configs"));
        Path yaml = folder.resolve("configs/my.yaml");

        CommandRun run = write(yaml);

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(Files.readString(yaml))
                .contains("file: \"../their data/mains.geojson\"", "# owner: OWNER")
                .contains("# What a useful ranking lacks:\n#   in_service: ")
                .doesNotContain("sample-gis", "contents:", "zones:", "values:", "crs:");
        RunConfig config = ConfigReader.read(yaml);
        LayerConfig read = config.inputs().routes();
        assertThat(read.file().paths().get(0).toRealPath()).isEqualTo(routes.toRealPath());
        assertThat(read.fields().byTerm())
                .containsOnlyKeys(
                        Term.ROUTE,
                        Term.INSIDE_DIAMETER,
                        Term.INNERDUCT_COUNT,
                        Term.CABLE_COUNT,
                        Term.VAULT_A,
                        Term.VAULT_B);
        assertThat(read.fields().find(Term.INSIDE_DIAMETER).orElseThrow().unit())
                .isEqualTo(Optional.of(Unit.MM));
        assertThat(config.inputs().contents()).isEqualTo(ContentsConfig.NONE);
        assertThat(config.inputs().zones()).isEqualTo(LayerConfig.NONE);
        assertThat(run.out())
                .contains("in_service: spans whose cables", "spanroom rank --config " + yaml)
                .doesNotContain("innerduct_count: no span");
    }

    @Test
    void aRunTakesTheConfigAsItIs() {
        Path yaml = folder.resolve("my.yaml");
        write(yaml);

        CommandRun run = CommandRun.of(
                "rank",
                "--config",
                yaml.toString(),
                "--output",
                folder.resolve("results").toString());

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out()).contains(LINES + " spans");
    }

    @Test
    void anExistingFileIsReplacedOnDemandOnlyAndAnInputNever() throws IOException {
        Path yaml = folder.resolve("my.yaml");
        Files.writeString(yaml, "mine");

        CommandRun refused = write(yaml);

        assertThat(refused.exitCode()).isEqualTo(ExitCode.OUTPUT);
        assertThat(refused.complaint()).contains("exists", "--overwrite");
        CommandRun foreign = write(yaml, "--overwrite");
        assertThat(foreign.exitCode()).isEqualTo(ExitCode.OUTPUT);
        assertThat(foreign.complaint()).contains("is not a config that check wrote, and is never replaced");
        assertThat(yaml).hasContent("mine");
        Files.writeString(yaml, "# Written by spanroom check --fields --write. Older words\n");
        assertThat(write(yaml, "--overwrite").exitCode()).isZero();
        assertThat(write(yaml, "--overwrite").exitCode()).isZero();
        assertThat(Files.readString(yaml)).startsWith("# Written by spanroom");

        String before = Files.readString(routes);
        assertThat(write(routes, "--overwrite").exitCode()).isEqualTo(ExitCode.OUTPUT);
        assertThat(routes).hasContent(before);
    }

    @Test
    void aGivenReferenceSystemIsWrittenAndAMissingOneEndsInOneLine() throws IOException {
        Path yaml = folder.resolve("my.yaml");
        Files.writeString(routes, lines("\"crs\":null,"));

        CommandRun refused = write(yaml);

        assertThat(refused.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(refused.complaint().lines()).hasSize(1).first().asString().contains("--crs EPSG:code");
        assertThat(yaml).doesNotExist();
        assertThat(refused.out()).contains("routes: no usable reference system is known");

        assertThat(write(yaml, "--crs", "EPSG:4326").exitCode()).isZero();
        assertThat(ConfigReader.read(yaml).inputs().routes().crs()).contains("EPSG:4326");
    }

    @Test
    void writeWithoutFieldsIsAWrongOption() {
        CommandRun run = CommandRun.of(
                "check",
                "--routes",
                routes.toString(),
                "--write",
                folder.resolve("my.yaml").toString());

        assertThat(run.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(run.complaint()).contains("--fields");
    }

    @Test
    void withoutAnythingItSaysWhatToGive() {
        CommandRun run = CommandRun.of("check", "--fields");

        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("routes: no file is given; name it with --routes");
    }
}
