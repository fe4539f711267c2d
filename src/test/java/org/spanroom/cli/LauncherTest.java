package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The launcher for POSIX shells, with a Java in its place that prints what it is called with. */
class LauncherTest {
    private static final Path SCRIPT = Path.of("src", "main", "dist", "bin", "spanroom");
    private static final long LARGE_BYTES = 20_000_000;

    @TempDir
    Path folder;

    private Path home;
    private Path java;

    @BeforeEach
    void install() throws IOException, InterruptedException {
        assumeThat(Path.of("/bin/sh")).as("a POSIX shell").exists();
        home = folder.resolve("a home with spaces");
        Files.createDirectories(home.resolve("bin"));
        Files.createDirectories(home.resolve("lib"));
        Files.copy(SCRIPT, home.resolve("bin").resolve("spanroom"));
        home.resolve("bin").resolve("spanroom").toFile().setExecutable(true);
        Files.createFile(home.resolve("lib").resolve("spanroom.jar"));
        java = java("my java", "17.0.9");
    }

    @Test
    void smallInputsGetTheOptionsOfSmallRuns() throws IOException, InterruptedException {
        List<String> called =
                arguments(run(Map.of(), "rank", "--config", config(1000).toString()));

        assertThat(called)
                .startsWith("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xmn32m")
                .containsSubsequence(
                        "-jar", home.toRealPath().resolve("lib/spanroom.jar").toString(), "rank", "--config")
                .noneMatch(argument -> argument.startsWith("-XX:MaxRAMPercentage"));
    }

    /** The options of the shipped file, except the archive of classes that only the build has. */
    @Test
    void optionsOfSmallRunsAreThoseOfTheOptionsFile() throws IOException, InterruptedException {
        List<String> shipped = Files.readAllLines(Path.of("config", "small.args")).stream()
                .filter(line -> line.startsWith("-") && !line.contains("spanroom.jsa"))
                .toList();

        assertThat(arguments(run(Map.of(), "--help"))).containsAll(shipped);
        Path archive = Files.createFile(home.resolve("lib").resolve("spanroom.jsa"));
        assertThat(arguments(run(Map.of(), "--help"))).contains("-XX:SharedArchiveFile=" + archive.toRealPath());
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(
            strings = {
                "rank --config %c",
                "rank --config=%c",
                "check --config %c --strict",
                "rank --routes %f --vaults x",
                "rank --routes=%f",
                "rank --from %r --scoring s.yaml",
                "explain B1 --run %r",
                "compare %r %r",
                "sample --spans 1000000 --output x"
            })
    void largeInputsGetTheFullCompilerAndTheMemoryThatIsFree(String line) throws IOException, InterruptedException {
        String config = config(LARGE_BYTES).toString();
        Path results = Files.createDirectory(folder.resolve("the results"));
        sized(results.resolve("spanroom.gpkg"), LARGE_BYTES);
        List<String> words = new ArrayList<>();
        for (String word : line.split(" ", -1)) {
            words.add(word.replace("%c", config)
                    .replace(
                            "%f",
                            folder.resolve("the data")
                                    .resolve("my ducts.geojson")
                                    .toString())
                    .replace("%r", results.toString()));
        }

        List<String> called = arguments(run(Map.of(), words.toArray(String[]::new)));

        assertThat(called).startsWith("-XX:+UseParallelGC").doesNotContain("-XX:TieredStopAtLevel=1");
        assertThat(called.get(1)).matches("-XX:MaxRAMPercentage=([2-7][0-9]|80)\\.0");
        assertThat(called.subList(called.indexOf("-jar") + 2, called.size())).isEqualTo(words);
    }

    /** The launcher and the file of options for those who start the jar themselves agree. */
    @Test
    void largeInputsGetTheOptionsOfTheFileForLargeNetworks() throws IOException, InterruptedException {
        List<String> options = Files.readAllLines(Path.of("config", "large.args")).stream()
                .filter(line -> line.startsWith("-"))
                .toList();

        List<String> called =
                arguments(run(Map.of(), "rank", "--config", config(LARGE_BYTES).toString()));

        assertThat(options).hasSizeGreaterThan(3);
        assertThat(called).containsAll(options);
    }

    /** Every way in which YAML can name files; and comments, which name none. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "file: my ducts.geojson | true",
                "file: 'my ducts.geojson'  # here | true",
                "file: [v.shp, my ducts.geojson] | true",
                "file:~  - v.shp~  - my ducts.geojson   # the large one | true",
                "file:~- \"my ducts.geojson\" | true",
                "file: [v.shp,~    my ducts.geojson] | true",
                "routes: {file: my ducts.geojson, fields: {duct: d}} | true",
                "routes: {fields: {duct: d}, file: [v.shp, 'my ducts.geojson']} | true",
                "file: v.shp   # not my ducts.geojson | false",
                "#file: my ducts.geojson | false",
                "# file: my ducts.geojson | false",
                "  # - my ducts.geojson | false",
                "profile: my ducts.geojson | false"
            })
    void filesOfAConfigCountHoweverItNamesThem(String lines, boolean large) throws IOException, InterruptedException {
        Path config = config(LARGE_BYTES);
        Files.writeString(config, "inputs:\n" + lines.replace('~', '\n') + "\n");

        assertThat(arguments(run(Map.of(), "rank", "--config=" + config)).get(0))
                .isEqualTo(large ? "-XX:+UseParallelGC" : "-XX:TieredStopAtLevel=1");
    }

    /** A run that wrote neither GeoPackage nor CSV is as large as its packed spans. */
    @Test
    void resultsCountInEveryFormat() throws IOException, InterruptedException {
        Path results = Files.createDirectory(folder.resolve("some results"));
        sized(results.resolve("run_spans.csv.gz"), LARGE_BYTES / 5);

        assertThat(arguments(run(Map.of(), "rank", "--from", results.toString()))
                        .get(0))
                .isEqualTo("-XX:+UseParallelGC");
    }

    @Test
    void optionsOfTheUserComeLastAndArgumentsStayWhole() throws IOException, InterruptedException {
        List<String> called = arguments(run(
                Map.of("SPANROOM_JAVA_OPTS", "-Xmx9g  -Dx=y"),
                "rank",
                "--where",
                "duct LIKE 'B 1%' AND x > 2",
                "",
                "*"));

        assertThat(called)
                .containsSubsequence("-Xmn32m", "-Xmx9g", "-Dx=y", "-jar")
                .endsWith("rank", "--where", "duct LIKE 'B 1%' AND x > 2", "", "*");
    }

    /** Relative and absolute links, a link to a link, and a link to the folder. */
    @Test
    void linksLeadHome() throws IOException, InterruptedException {
        Path links = Files.createDirectory(folder.resolve("some links"));
        Path absolute = Files.createSymbolicLink(links.resolve("absolute"), home.resolve("bin/spanroom"));
        Path relative = Files.createSymbolicLink(
                links.resolve("relative"), Path.of("..", "a home with spaces", "bin", "spanroom"));
        Path twice = Files.createSymbolicLink(links.resolve("twice"), Path.of("relative"));
        Path house = Files.createSymbolicLink(links.resolve("house"), home);

        for (Path start : List.of(absolute, relative, twice, house.resolve("bin/spanroom"))) {
            assertThat(arguments(run(start, Map.of(), "check")))
                    .contains(home.toRealPath().resolve("lib/spanroom.jar").toString());
        }
    }

    @ParameterizedTest
    @CsvSource({"1.8.0_392, 1", "11.0.21, 1", "16.0.2, 1", "17, 0", "17.0.9, 0", "21-ea, 0", "25.0.1, 0"})
    void javaThatIsTooOldIsRefused(String version, int exitCode) throws IOException, InterruptedException {
        java = java("java of another age", version);

        Ended ended = run(Map.of(), "--version");

        assertThat(ended.exitCode()).isEqualTo(exitCode);
        if (exitCode == 1) {
            assertThat(ended.err())
                    .isEqualTo("spanroom: Java " + version
                            + " is too old; install Java 17 or later, or set JAVA_HOME to its folder\n");
        }
    }

    @Test
    void whatIsMissingIsSaidInOneLine() throws IOException, InterruptedException {
        Ended noHome = run(Map.of("JAVA_HOME", folder.resolve("none").toString()), "rank");
        assertThat(noHome.exitCode()).isEqualTo(1);
        assertThat(noHome.err().lines()).singleElement().asString().contains("there is no Java in JAVA_HOME");

        Ended noJava = run(Map.of("JAVA_HOME", "", "PATH", toolsWithoutJava()), "rank");
        assertThat(noJava.err())
                .isEqualTo("spanroom: Java is missing; install Java 17 or later, or set JAVA_HOME to its folder\n");

        Files.delete(home.resolve("lib/spanroom.jar"));
        assertThat(run(Map.of(), "rank").err().lines())
                .singleElement()
                .asString()
                .contains("spanroom.jar is missing");
    }

    private String toolsWithoutJava() throws IOException {
        Path tools = Files.createDirectory(folder.resolve("tools"));
        for (String tool : List.of("ls", "dirname", "sed", "head", "wc", "tr", "sh")) {
            for (String place : List.of("/bin", "/usr/bin")) {
                if (Files.exists(Path.of(place, tool)) && !Files.exists(tools.resolve(tool))) {
                    Files.createSymbolicLink(tools.resolve(tool), Path.of(place, tool));
                }
            }
        }
        return tools.toString();
    }

    /** A Java that prints its arguments, one a line. */
    private Path java(String name, String version) throws IOException {
        Path bin = Files.createDirectories(folder.resolve(name).resolve("bin"));
        Path program = bin.resolve("java");
        Files.writeString(
                program,
                "#!/bin/sh\nif [ \"$1\" = -version ]; then echo 'openjdk version \"" + version
                        + "\" 2023-10-17' >&2; exit; fi\nfor a in \"$@\"; do printf '%s\\n' \"<$a>\"; done\n");
        program.toFile().setExecutable(true);
        return bin.getParent();
    }

    /** A config that names routes of so many bytes, in the ways that YAML allows. */
    private Path config(long bytes) throws IOException {
        Path data = Files.createDirectories(folder.resolve("the data"));
        sized(data.resolve("my ducts.geojson"), bytes);
        sized(data.resolve("v.shp"), 100);
        return Files.writeString(data.resolve("my.yaml"), """
                inputs:
                  routes:
                    file: ["my ducts.geojson", v.shp]   # two
                  vaults:
                    file: 'v.shp'
                  contents:
                    file:
                """);
    }

    private static void sized(Path file, long bytes) throws IOException {
        try (var channel = new java.io.RandomAccessFile(file.toFile(), "rw")) {
            channel.setLength(bytes);
        }
    }

    private record Ended(int exitCode, String out, String err) {}

    private List<String> arguments(Ended ended) {
        assertThat(ended.exitCode()).as(ended.err()).isZero();
        return ended.out()
                .lines()
                .map(line -> line.substring(1, line.length() - 1))
                .toList();
    }

    private Ended run(Map<String, String> environment, String... args) throws IOException, InterruptedException {
        return run(home.resolve("bin/spanroom"), environment, args);
    }

    private Ended run(Path start, Map<String, String> environment, String... args)
            throws IOException, InterruptedException {
        var command = new ArrayList<>(List.of(start.toString()));
        command.addAll(List.of(args));
        Path err = folder.resolve("err.txt");
        var builder = new ProcessBuilder(command)
                .directory(Files.createDirectories(folder.resolve("elsewhere")).toFile())
                .redirectError(err.toFile());
        builder.environment().remove("SPANROOM_JAVA_OPTS");
        builder.environment().put("JAVA_HOME", java.toString());
        builder.environment().putAll(environment);
        Process process = builder.start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Ended(process.waitFor(), out, Files.readString(err));
    }
}
