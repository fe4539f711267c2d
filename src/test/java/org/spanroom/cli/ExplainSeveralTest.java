package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code explain} by rank and of several spans. */
class ExplainSeveralTest {
    @TempDir
    static Path folder;

    private static Path run;
    /** The ids of the ranked spans, the best first, as the run's table has them. */
    private static List<String> ranked;

    @BeforeAll
    static void makeARun() throws IOException {
        run = folder.resolve("run");
        assertThat(CommandRun.of(
                                "sample",
                                "--spans",
                                "300",
                                "--output",
                                folder.resolve("city").toString())
                        .exitCode())
                .isZero();
        CommandRun rank = CommandRun.of(
                "rank",
                "--config",
                folder.resolve("city/spanroom.yaml").toString(),
                "--output",
                run.toString(),
                "--formats",
                "gpkg,csv");
        assertThat(rank.exitCode()).as(rank.err()).isZero();
        try (Stream<String> lines = Files.lines(run.resolve("spans.csv"))) {
            ranked = lines.skip(1)
                    .map(line -> line.split(",", 3))
                    .filter(cells -> cells[1].matches("\\d+"))
                    .map(cells -> cells[0])
                    .toList();
        }
    }

    @Test
    void everyRankIsTheSpanOfTheTable() throws IOException {
        List<Integer> ranks = List.of(1, 2, ranked.size() / 2, ranked.size());

        CommandRun several =
                explain("--json", "--rank", ranks.stream().map(String::valueOf).collect(Collectors.joining(",")));

        assertThat(several.exitCode()).as(several.err()).isZero();
        JsonNode all = new ObjectMapper().readTree(several.out());
        assertThat(all.isArray()).isTrue();
        assertThat(all).hasSameSizeAs(ranks);
        for (int i = 0; i < ranks.size(); i++) {
            assertThat(all.get(i).get("rank").asInt()).isEqualTo(ranks.get(i));
            assertThat(all.get(i).get("span_id").asText()).isEqualTo(ranked.get(ranks.get(i) - 1));
            // Each as if it had been asked for alone.
            assertThat(all.get(i))
                    .isEqualTo(new ObjectMapper()
                            .readTree(explain("--json", ranked.get(ranks.get(i) - 1))
                                    .out()));
        }
        assertThat(several.err().lines().filter(line -> line.startsWith("read inputs")))
                .hasSize(1);
    }

    @Test
    void idsComeBeforeRanksAndNoSpanTwice() {
        CommandRun text = explain(ranked.get(2), ranked.get(0), "--rank", "3,2", ranked.get(0));

        assertThat(text.out().lines().filter(line -> line.startsWith("Span ")))
                .containsExactly("Span " + ranked.get(2), "Span " + ranked.get(0), "Span " + ranked.get(1));
    }

    @Test
    void withoutGeoPackageRanksComeFromTheCsvFile() throws IOException {
        Path hidden = run.resolveSibling("hidden.gpkg");
        Files.move(run.resolve("spanroom.gpkg"), hidden);
        try {
            assertThat(explain("--rank", "2").out()).startsWith("Span " + ranked.get(1) + "\n");
        } finally {
            Files.move(hidden, run.resolve("spanroom.gpkg"));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"99999", "1,2,88888"})
    void aRankThatNoSpanHasSaysHowManyThereAre(String ranks) {
        CommandRun wrong = explain("--rank", ranks);

        assertThat(wrong.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(wrong.complaint().lines())
                .singleElement()
                .asString()
                .contains("no span has rank " + ranks.replaceFirst(".*,", ""))
                .contains("the run has " + ranked.size() + " ranks. Give ranks from 1 to " + ranked.size());
        assertThat(wrong.err()).doesNotContain("read inputs");
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-1", "1,x", "1.5", ","})
    void nonsenseIsAWrongOption(String ranks) {
        assertThat(explain("--rank", ranks).exitCode()).isEqualTo(ExitCode.USAGE);
    }

    /** Names of any characters: each sheet is a file of its own in the folder, and none is outside of it. */
    @Test
    void severalSheetsGoToAFolder() throws IOException {
        Path sheets = folder.resolve("sheets");

        assertThat(explain("--rank", "1,2", "--svg", sheets.toString()).exitCode())
                .isZero();
        try (Stream<Path> files = Files.list(sheets)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder(
                            ranked.get(0).replace(':', '_') + ".svg",
                            ranked.get(1).replace(':', '_') + ".svg");
        }
        assertThat(explain("--rank", "1,2", "--svg", sheets.toString()).exitCode())
                .isEqualTo(ExitCode.OUTPUT);
        assertThat(explain("--rank", "1,2", "--svg", sheets.toString(), "--overwrite")
                        .exitCode())
                .isZero();
        Path file = Files.writeString(folder.resolve("a file"), "kept");
        CommandRun onto = explain("--rank", "1,2", "--svg", file.toString(), "--overwrite");
        assertThat(onto.exitCode()).isEqualTo(ExitCode.OUTPUT);
        assertThat(onto.complaint()).contains("a file: is a file. Name a folder with --svg");
        assertThat(file).hasContent("kept");
    }

    @Test
    void sheetsOfHostileIdsStayInTheirFolderAndApart() throws IOException {
        Path sheets = folder.resolve("hostile");
        List<String> ids =
                List.of("../../x", "..", "a/b", "a:b", "A:B", "a\u0000b", "x".repeat(400), ".hidden", "é", "");

        SheetFiles files = SheetFiles.check(sheets, ids, false);
        for (int i = 0; i < ids.size(); i++) {
            files.write(i, "sheet " + i);
        }

        var names = new ArrayList<String>();
        try (Stream<Path> written = Files.walk(sheets)) {
            written.filter(Files::isRegularFile)
                    .forEach(file -> names.add(file.getFileName().toString()));
        }
        assertThat(names)
                .hasSameSizeAs(ids)
                .allSatisfy(name -> assertThat(name).matches("[A-Za-z0-9_-][A-Za-z0-9._-]{0,110}"));
        assertThat(names.stream().map(name -> name.toLowerCase(Locale.ROOT))).doesNotHaveDuplicates();
    }

    private static CommandRun explain(String... more) {
        var args = new ArrayList<>(List.of("explain", "--run", run.toString()));
        args.addAll(List.of(more));
        return CommandRun.of(args.toArray(String[]::new));
    }
}
