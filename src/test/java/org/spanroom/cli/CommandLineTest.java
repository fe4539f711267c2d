package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The command line as its user meets it: options, messages, exit codes. */
class CommandLineTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @TempDir
    Path folder;

    @ParameterizedTest(name = "spanroom {0} --help")
    @ValueSource(
            strings = {
                "",
                "rank",
                "check",
                "explain",
                "compare",
                "path",
                "corridors",
                "connect",
                "report",
                "sheets",
                "learn",
                "sample"
            })
    void helpFitsAnOldTerminalAndListsExitCodes(String command) {
        int code = command.isEmpty() ? run("--help") : run(command, "--help");

        assertThat(code).isZero();
        assertThat(out.toString().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80));
        assertThat(out.toString()).contains("Exit codes:", "wrong options");
    }

    @Test
    void wrongOptionIsOneLineAndCode2() {
        assertThat(run("rank", "--outptu", "x")).isEqualTo(ExitCode.USAGE);
        assertThat(err.toString().lines()).hasSize(2);
        assertThat(err.toString()).contains("--outptu", "Try 'spanroom rank --help'.");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rank --threads -3",
                "check --threads 0x",
                "sample --spans -5 --output x",
                "sample --spans 0 --output x"
            })
    void numbersOutOfRangeAreWrongOptions(String line) {
        assertThat(run(line.split(" ", -1))).isEqualTo(ExitCode.USAGE);
        assertThat(err.toString().lines()).hasSize(2);
        assertThat(err.toString()).contains("is not a whole number from 1 to");
    }

    @Test
    void routesWithoutVaultsAndNothingAtAllAreSaid() {
        assertThat(run("rank", "--output", folder.resolve("r").toString())).isEqualTo(ExitCode.INPUT);
        assertThat(messages()).hasSize(1).last().asString().contains("--vaults");
        assertThat(run(
                        "rank",
                        "--vaults",
                        "v.shp",
                        "--output",
                        folder.resolve("r").toString()))
                .isEqualTo(ExitCode.INPUT);
        assertThat(messages()).hasSize(2).last().asString().contains("--routes");
    }

    @Test
    void withoutACommandTheUserIsToldWhatThereIs() {
        assertThat(run()).isEqualTo(ExitCode.USAGE);
        assertThat(err.toString()).contains("rank", "check", "sample");
    }

    @Test
    void missingInputIsOneLineAndCode3() {
        Path missing = folder.resolve("none.geojson");

        int code = run("check", "--routes", missing.toString(), "--vaults", missing.toString());

        assertThat(code).isEqualTo(ExitCode.INPUT);
        assertThat(messages())
                .hasSize(1)
                .first()
                .asString()
                .contains("none.geojson")
                .doesNotContain("Exception");
    }

    @Test
    void rankWritesOnceRefusesTheSecondTimeAndOverwritesWhenTold() throws IOException {
        Path config = city(60);
        Path results = folder.resolve("results");

        assertThat(rank(config, results)).isZero();
        assertThat(out.toString()).contains("spans are candidates", "The best of ", "Results are in " + results);
        byte[] first = Files.readAllBytes(results.resolve("spans.csv"));

        assertThat(rank(config, results)).isEqualTo(ExitCode.OUTPUT);
        assertThat(messages()).last().asString().contains("--overwrite");

        assertThat(rank(config, results, "--overwrite", "--threads", "1")).isZero();
        assertThat(Files.readAllBytes(results.resolve("spans.csv"))).isEqualTo(first);
        assertThat(folder.toFile().list()).containsExactlyInAnyOrder("city", "results");
    }

    @Test
    void strictEndsWithCode4WhereFindingsAreToMend() throws IOException {
        Path config = city(60);

        assertThat(rank(config, folder.resolve("results"), "--strict")).isEqualTo(ExitCode.FINDINGS);
        assertThat(folder.resolve("results").resolve("run.json")).exists();
    }

    @Test
    void checkTellsDistancesFindingsAndWritesNothing() throws IOException {
        Path config = city(60);

        assertThat(run("check", "--config", config.toString())).isZero();

        assertThat(out.toString()).contains("within 0.1 m", "within 5.0 m", "m not assigned to a span", "to fix");
        assertThat(folder.toFile().list()).containsExactly("city");
    }

    @Test
    void checkProposesAFieldMapThatTheConfigUnderstands() throws IOException {
        Path config = city(60);

        assertThat(run("check", "--fields", "--config", config.toString())).isZero();

        String proposal = out.toString().substring(out.toString().indexOf("inputs:"));
        assertThat(proposal).contains("innerduct_outside_diameter: {field: innerduct_od_in, unit: in}");

        Path pasted = folder.resolve("pasted.yaml");
        Files.writeString(pasted, proposal);
        assertThat(rank(pasted, folder.resolve("results"))).as(err.toString()).isZero();
    }

    @Test
    void unknownReferenceSystemSaysHowToGiveIt() throws IOException {
        Path config = city(60);

        int code = run("check", "--config", config.toString(), "--crs", "EPSG:nonsense");

        assertThat(code).isEqualTo(ExitCode.INPUT);
        assertThat(messages()).hasSize(1).first().asString().contains("EPSG:nonsense");
    }

    @Test
    void unknownReferenceSystemForResultsIsSaidBeforeAnyWork() throws IOException {
        Path config = city(60);

        assertThat(rank(config, folder.resolve("results"), "--output-crs", "EPSG:nonsense"))
                .isEqualTo(ExitCode.INPUT);
        assertThat(messages()).hasSize(1).first().asString().contains("--output-crs");
        assertThat(err.toString()).doesNotContain("read inputs");
    }

    /** Writes a small city; returns the config that comes with it. */
    private Path city(int spans) throws IOException {
        assertThat(run(
                        "sample",
                        "--spans",
                        "" + spans,
                        "--seed",
                        "5",
                        "--output",
                        folder.resolve("city").toString()))
                .isZero();
        return folder.resolve("city").resolve("spanroom.yaml");
    }

    private int rank(Path config, Path results, String... more) {
        var args = new java.util.ArrayList<String>(
                java.util.List.of("rank", "--config", config.toString(), "--output", results.toString()));
        args.addAll(java.util.List.of(more));
        return run(args.toArray(String[]::new));
    }

    private int run(String... args) {
        return SpanroomCommand.execute(new Console(new PrintWriter(out), new PrintWriter(err), false), args);
    }

    /** Returns what was printed on the error stream in addition to the lines of finished stages. */
    private java.util.List<String> messages() {
        return err.toString()
                .lines()
                .filter(line -> line.startsWith("spanroom: "))
                .toList();
    }
}
