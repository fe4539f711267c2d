package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.testing.ExternalTool;

/** Lean results are enough for every later command, and the one file that these read is refused where it is not whole. */
class RunSpansTest {
    private static final String FILE = "run_spans.csv.gz";
    private static final Path DEMO = Path.of("sample-gis", "spanroom.yaml");

    @TempDir
    static Path runs;

    @TempDir
    Path folder;

    @BeforeAll
    static void rank() {
        rank("lean");
        rank("all", "--columns", "all");
        rank("csv", "--formats", "csv");
        rank("some", "--where", "rank <= 10");
    }

    private static void rank(String name, String... more) {
        List<String> words = new ArrayList<>(List.of(
                "rank",
                "--config",
                DEMO.toString(),
                "--no-uncertainty",
                "--output",
                runs.resolve(name).toString()));
        words.addAll(List.of(more));
        CommandRun run = CommandRun.of(words.toArray(String[]::new));
        assertThat(run.exitCode()).as(run.err()).isZero();
    }

    private CommandRun again(Path from, String... more) {
        List<String> words = new ArrayList<>(List.of(
                "rank",
                "--from",
                from.toString(),
                "--scoring",
                "config/scoring.yaml",
                "--output",
                folder.resolve("again").toString()));
        words.addAll(List.of(more));
        return CommandRun.of(words.toArray(String[]::new));
    }

    /** Core columns by default, whose cells are those of a run with all columns. */
    @Test
    void aLeanRunHasTheCoreColumnsOfAWholeOne() throws IOException {
        List<CSVRecord> lean = table(runs.resolve("lean"), "spans");
        List<CSVRecord> all = table(runs.resolve("all"), "spans");
        List<String> columns = lean.get(0).getParser().getHeaderNames();

        assertThat(columns).hasSizeBetween(38, 46).startsWith("span_id", "rank", "score_points", "exclusion");
        assertThat(all.get(0).getParser().getHeaderNames()).containsAll(columns).hasSizeGreaterThan(120);
        assertThat(lean).hasSameSizeAs(all);
        for (int row = 0; row < lean.size(); row++) {
            for (String column : columns) {
                assertThat(lean.get(row).get(column))
                        .as(column)
                        .isEqualTo(all.get(row).get(column));
            }
        }
    }

    @Test
    void theSameScoringGivesTheSameSpansFromALeanRun() throws IOException {
        CommandRun run = again(runs.resolve("lean"));

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(table(folder.resolve("again"), "spans"))
                .map(CSVRecord::toList)
                .isEqualTo(table(runs.resolve("lean"), "spans").stream()
                        .map(CSVRecord::toList)
                        .toList());
        assertThat(folder.resolve("again").resolve(FILE)).isNotEmptyFile();
    }

    @Test
    void theSameScoringGivesTheSameTablesFromARunInCsv() throws IOException {
        CommandRun run = again(runs.resolve("csv"));

        assertThat(run.exitCode()).as(run.err()).isZero();
        for (String name : List.of("spans.csv", "findings.csv", "sections.csv")) {
            assertThat(folder.resolve("again").resolve(name))
                    .hasSameTextualContentAs(runs.resolve("csv").resolve(name));
        }
    }

    @Test
    void layersNeedARunThatHasShapes() {
        CommandRun run = again(runs.resolve("csv"), "--formats", "geopackage,csv");

        assertThat(run.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(run.complaint()).contains("spanroom.gpkg", "--formats csv").hasLineCount(1);
    }

    /** The lines of the run are gone too, so that another format is no way out. */
    @Test
    void aGeoPackageThatWasDeletedIsNamedAsWhatIsMissing() throws IOException {
        Path run = folder.resolve("without");
        copy(runs.resolve("lean"), run);
        Files.delete(run.resolve("spanroom.gpkg"));

        for (String formats : List.of("csv", "geopackage,csv", "shapefile")) {
            CommandRun refused = again(run, "--formats", formats);

            assertThat(refused.exitCode()).isEqualTo(ExitCode.INPUT);
            assertThat(refused.complaint())
                    .contains("lacks spanroom.gpkg", "Bring it back")
                    .doesNotContain("--formats")
                    .hasLineCount(1);
        }
    }

    @Test
    void groupsThatTheEarlierRunDidNotWriteAreNamed() throws IOException {
        CommandRun run = again(runs.resolve("lean"), "--columns", "pull,score");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out()).contains("pulls is left out", "Make that run with --columns pull.");
        assertThat(table(folder.resolve("again"), "score_parts")).isNotEmpty();
    }

    @Test
    void runsWithDifferentColumnsAreTheSameRun() {
        for (String other : List.of("all", "csv", "some")) {
            CommandRun compared = CommandRun.of(
                    "compare",
                    runs.resolve("lean").toString(),
                    runs.resolve(other).toString(),
                    "--output",
                    folder.resolve("moves-" + other).toString());

            assertThat(compared.exitCode()).as(compared.err()).isZero();
            assertThat(compared.out()).as(other).contains("0 spans changed, 2,466 unchanged");
        }
    }

    /** GDAL reads it as a table, through its reader of gzip, with as many rows as the run has spans, kept or not. */
    @ParameterizedTest
    @ValueSource(strings = {"lean", "csv", "some"})
    void otherProgramsReadTheFile(String run) throws IOException {
        String file = "/vsigzip/" + runs.resolve(run).resolve(FILE).toAbsolutePath();
        String read = ExternalTool.named("ogrinfo").run("-ro", "-so", "-al", "CSV:" + file);

        assertThat(read).contains("Feature Count: 2466", "span_id: String");
        assertThat(read.contains("line_wkt")).isEqualTo(!run.equals("lean"));
    }

    @Test
    void explainFindsASpanThatTheRunDidNotWrite() throws IOException {
        String hundredth = table(runs.resolve("lean"), "spans").get(99).get("span_id");

        CommandRun explained = CommandRun.of(
                "explain", hundredth, "--run", runs.resolve("some").toString());

        assertThat(explained.exitCode()).as(explained.err()).isZero();
        assertThat(explained.out()).contains("rank 100 of");
    }

    /** Whatever is wrong with the file: one line that names it and says what to do, from each command. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("damages")
    void aFileThatIsNotWholeIsRefused(String damage, Damage done, String words) throws IOException {
        Path broken = folder.resolve("broken");
        copy(runs.resolve("lean"), broken);
        done.to(broken);

        for (CommandRun run : List.of(
                again(broken),
                CommandRun.of("explain", "B19-6:V1-1049:V1-1050", "--run", broken.toString()),
                CommandRun.of(
                        "compare",
                        runs.resolve("lean").toString(),
                        broken.toString(),
                        "--output",
                        folder.resolve("moves").toString()))) {
            assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.INPUT);
            assertThat(run.complaint()).contains(words, "Make the run again").hasLineCount(1);
        }
    }

    interface Damage {
        void to(Path run) throws IOException;
    }

    static Stream<Arguments> damages() {
        return Stream.of(
                damage("gone", run -> Files.delete(run.resolve(FILE)), FILE + ": it is missing"),
                damage("empty", run -> Files.write(run.resolve(FILE), new byte[0]), "damaged or cut off"),
                damage("cut off", run -> cut(run.resolve(FILE)), "damaged or cut off"),
                damage("no gzip", run -> Files.writeString(run.resolve(FILE), "span_id\r\nA\r\n"), "damaged"),
                damage("a row less", run -> rewrite(run, RunSpansTest::withoutLastRow), "run.json counts 2466"),
                damage("a cell less", run -> rewrite(run, text -> text.replaceFirst("(?<=\\r\\n)[^,]*,", "")), FILE),
                damage(
                        "no number",
                        run -> rewrite(run, text -> text.replaceFirst("(?<=\\r\\n)([^,]*),1,", "$1,one,")),
                        FILE),
                damage("another version", RunSpansTest::another, "version 99"));
    }

    private static Arguments damage(String name, Damage damage, String words) {
        return Arguments.of(name, damage, words);
    }

    private static void cut(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(bytes, bytes.length / 2));
    }

    private static String withoutLastRow(String text) {
        return text.substring(0, text.lastIndexOf("\r\n", text.length() - 3) + 2);
    }

    private static void rewrite(Path run, UnaryOperator<String> change) throws IOException {
        Path file = run.resolve(FILE);
        String text;
        try (var in = new GZIPInputStream(Files.newInputStream(file))) {
            text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        String changed = change.apply(text);
        assertThat(changed).isNotEqualTo(text);
        try (var out = new GZIPOutputStream(Files.newOutputStream(file))) {
            out.write(changed.getBytes(StandardCharsets.UTF_8));
        }
    }

    private static void another(Path run) throws IOException {
        Path record = run.resolve("run.json");
        String text = Files.readString(record);
        String changed = text.replaceFirst("\"run_spans_format\" : \\d+", "\"run_spans_format\" : 99");
        assertThat(changed).isNotEqualTo(text);
        Files.writeString(record, changed);
    }

    private static void copy(Path run, Path to) throws IOException {
        Files.createDirectory(to);
        try (Stream<Path> files = Files.list(run)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
    }

    private static List<CSVRecord> table(Path run, String name) throws IOException {
        try (var parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(new BufferedReader(new InputStreamReader(
                        Files.newInputStream(run.resolve(name + ".csv")), StandardCharsets.UTF_8)))) {
            return parser.getRecords();
        }
    }
}
