package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.sample.DemoCity;
import org.spanroom.testing.FolderState;
import org.spanroom.testing.ForkedRun;

/**
 * A run keeps to itself: it reaches for no network, reads what was named, and leaves nothing in the temporary place. GeoPackage in
 * and a system of the EPSG dataset out bring in every library that unpacks files of its own.
 */
class PrivateRunTest {
    @TempDir
    static Path shared;

    @TempDir
    Path folder;

    private static Path city;

    @BeforeAll
    static void layOutACity() {
        city = shared.resolve("city");
        DemoCity.write(120, 5, city, DemoCity.Format.GPKG);
    }

    @Test
    void noWayToTheNetworkIsTried() throws IOException {
        try (ForkedRun watch = ForkedRun.start(List.of(), List.of(), WatchedMain.class, folder, List.of("attempts"))) {
            assertThat(watch.exitCode()).as(watch.err()).isZero();
            assertThat(watch.err().lines().filter("seen"::equals)).hasSize(3);
        }
        try (ForkedRun run = start(List.of(), WatchedMain.class, "a")) {
            assertThat(run.exitCode()).as(run.err()).isZero();
            assertThat(run.err()).doesNotContain("NETWORK");
        }
    }

    @Test
    void withoutANetworkTheResultsAreTheSame() throws IOException {
        List<String> alone = List.of("unshare", "-rn");
        assumeTrue(succeeds("unshare", "-rn", "true"), "no leave to make a space without network; test skipped");
        try (ForkedRun with = start(List.of(), Main.class, "a")) {
            assertThat(with.exitCode()).as(with.err()).isZero();
        }
        try (ForkedRun without = start(alone, Main.class, "b")) {
            assertThat(without.exitCode()).as(without.err()).isZero();
        }
        Map<String, String> a = FolderState.of(folder.resolve("a"));
        Map<String, String> b = FolderState.of(folder.resolve("b"));
        // The record and the GeoPackage hold the time of the run.
        Stream.of(a, b).forEach(state -> state.keySet().removeAll(Set.of("run.json", "spanroom.gpkg")));
        assertThat(a).isNotEmpty().isEqualTo(b);
    }

    /** Two at once, in a temporary place where somebody has laid files under the names that the libraries would use. */
    @Test
    void theTemporaryPlaceIsLeftAsItWasAndTwoRunsDoNotMeetThere() throws IOException {
        Path tmp = Files.createDirectories(folder.resolve("tmp"));
        for (String name : List.of("GeoTools", "Geotools", "EPSG", "spanroom-epsg", "sqlite")) {
            Files.writeString(tmp.resolve(name), "laid in wait");
        }
        Map<String, String> before = FolderState.of(tmp);
        var modes = new TreeSet<String>();
        try (ForkedRun one = start(List.of(), Main.class, "a");
                ForkedRun other = start(List.of(), Main.class, "b")) {
            one.await(() -> sawBoth(tmp, modes));
            assertThat(one.exitCode()).as(one.err()).isZero();
            assertThat(other.exitCode()).as(other.err()).isZero();
        }
        assertThat(modes).containsExactly("rwx------");
        assertThat(FolderState.of(tmp)).isEqualTo(before);
        assertThat(FolderState.of(folder.resolve("a")).get("spans.csv"))
                .isEqualTo(FolderState.of(folder.resolve("b")).get("spans.csv"));
    }

    /** Every file that is opened belongs to Java, the system, the program, the temporary place, or was named. */
    @Test
    void nothingIsReadThatWasNotNamed() throws IOException {
        Path log = folder.resolve("calls.txt");
        List<String> traced =
                List.of("strace", "-f", "-qq", "-e", "trace=open,openat,connect,bind", "-o", log.toString());
        assumeTrue(succeeds("strace", "-V"), "strace is not on the PATH; test skipped");
        assumeTrue(succeeds("strace", "true"), "no leave to trace; test skipped");
        try (ForkedRun run = start(traced, Main.class, "a")) {
            assertThat(run.exitCode()).as(run.err()).isZero();
        }

        List<String> calls = Files.readAllLines(log);

        assertThat(calls).filteredOn(call -> call.contains("AF_INET")).isEmpty();
        Set<String> opened = opened(calls);
        assertThat(opened).anyMatch(file -> file.endsWith("city.gpkg"));
        assertThat(opened).filteredOn(file -> !isExpected(file)).isEmpty();
    }

    private boolean isExpected(String file) {
        List<String> roots =
                new ArrayList<>(List.of(System.getProperty("java.class.path").split(":", -1)));
        roots.addAll(List.of(
                System.getProperty("java.home"),
                "/lib/",
                "/usr/lib/",
                "/usr/share/",
                "/etc/",
                "/proc/",
                "/sys/",
                "/dev/",
                city.toString(),
                folder.toString(),
                // The run names the demo's config, which names its zones.
                "sample-gis/spanroom.yaml",
                "sample-gis/zones.gpkg",
                Path.of("sample-gis/zones.gpkg").toAbsolutePath().toString(),
                "config/"));
        return roots.stream().anyMatch(file::startsWith);
    }

    private static Set<String> opened(List<String> calls) {
        Pattern open = Pattern.compile("open(?:at)?\\([^\"]*\"([^\"]+)\".* = \\d+$");
        var files = new TreeSet<String>();
        for (String call : calls) {
            Matcher matcher = open.matcher(call);
            if (matcher.find()) {
                files.add(matcher.group(1));
            }
        }
        return files;
    }

    private static boolean sawBoth(Path tmp, Set<String> modes) {
        try (Stream<Path> made = Files.list(tmp)) {
            List<Path> ours = made.filter(
                            path -> path.getFileName().toString().matches("spanroom-(epsg|sqlite|solver).+"))
                    .toList();
            for (Path path : ours) {
                modes.add(PosixFilePermissions.toString(Files.getPosixFilePermissions(path)));
            }
            return ours.size() >= 2;
        } catch (IOException e) {
            return false;
        }
    }

    private ForkedRun start(List<String> before, Class<?> main, String output) throws IOException {
        Path tmp = Files.createDirectories(folder.resolve("tmp"));
        return ForkedRun.start(
                before,
                List.of("-XX:-UsePerfData", "-Djava.io.tmpdir=" + tmp),
                main,
                folder,
                List.of(
                        "rank",
                        "--config",
                        "sample-gis/spanroom.yaml",
                        "--routes",
                        city.resolve("city.gpkg").toString(),
                        "--routes-layer",
                        "ducts",
                        "--vaults",
                        city.resolve("city.gpkg").toString(),
                        "--vaults-layer",
                        "vaults",
                        "--contents",
                        city.resolve("contents.csv").toString(),
                        "--output-crs",
                        "EPSG:3857",
                        "--output",
                        folder.resolve(output).toString()));
    }

    private static boolean succeeds(String... command) {
        try {
            return new ProcessBuilder(command)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .redirectError(ProcessBuilder.Redirect.DISCARD)
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
