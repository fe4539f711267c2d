package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.sample.DemoCity;
import org.spanroom.testing.FolderState;

/** A run never replaces what it reads, nor a file that no run wrote. */
class InputsInResultsTest {
    @TempDir
    Path folder;

    private Path city;

    @BeforeEach
    void layOutACity() {
        city = folder.resolve("city");
        DemoCity.write(60, 3, city);
    }

    @Test
    void anInputInTheResultsFolderIsNotLostByReplacingIt() throws IOException {
        Path results = folder.resolve("run");
        assertThat(rank(city.resolve("ducts.geojson"), results).exitCode()).isZero();
        // A file of the run's own name, so that nothing in the folder is foreign.
        Files.copy(city.resolve("ducts.geojson"), results.resolve("run_copy.geojson"));
        Files.move(
                results.resolve("run_copy.geojson"), results.resolve("spans.csv"), StandardCopyOption.REPLACE_EXISTING);
        Map<String, String> before = FolderState.of(results);

        CommandRun again = rank(results.resolve("spans.csv"), results);

        assertThat(again.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(again.err()).contains("holds the file that is read, " + results.resolve("spans.csv"));
        assertThat(FolderState.of(results)).isEqualTo(before);
    }

    @Test
    void aFolderOfResultsThatIsAnInputIsRefused() {
        Path routes = city.resolve("ducts.geojson");

        CommandRun run = rank(routes, routes);

        assertThat(run.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(run.err())
                .contains("the results folder " + routes
                        + " (--output, or output.folder in the config) is a file that is read");
        assertThat(routes).isRegularFile();
    }

    @Test
    void theSameThroughALink() throws IOException {
        Path results = folder.resolve("run");
        assertThat(rank(city.resolve("ducts.geojson"), results).exitCode()).isZero();
        Path link = Files.createSymbolicLink(folder.resolve("elsewhere"), results);

        CommandRun again = rank(link.resolve("spans.csv"), results);

        assertThat(again.exitCode()).isEqualTo(ExitCode.USAGE);
    }

    @Test
    void aPackingFileThatNoRunWroteIsNeverReplaced() throws IOException {
        Path contents = city.resolve("contents.csv");
        byte[] before = Files.readAllBytes(contents);
        Path config = folder.resolve("own.yaml");
        Files.writeString(config, "output: {packing_file: '" + contents + "'}\n");

        CommandRun run = rank(city.resolve("ducts.geojson"), folder.resolve("run"), "--config", config.toString());

        assertThat(run.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(run.err().lines())
                .singleElement()
                .asString()
                .contains(contents.toString(), "output.packing_file names a file that is not a packing file");
        assertThat(Files.readAllBytes(contents)).isEqualTo(before);
        assertThat(folder.resolve("run")).doesNotExist();
    }

    private CommandRun rank(Path routes, Path results, String... others) {
        var arguments = new ArrayList<>(List.of(
                "rank",
                "--routes",
                routes.toString(),
                "--vaults",
                city.resolve("vaults.geojson").toString(),
                "--output",
                results.toString(),
                "--overwrite"));
        arguments.addAll(List.of(others));
        return CommandRun.of(arguments.toArray(String[]::new));
    }
}
