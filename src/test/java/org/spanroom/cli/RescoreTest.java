package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Ranks the demo city anew by another scoring, and compares that with a run that had this scoring from the beginning. */
class RescoreTest {
    private static final Path CONFIG = Path.of("config", "spanroom.yaml");

    @TempDir
    static Path runs;

    @TempDir
    Path folder;

    @BeforeAll
    static void makeARun() {
        rank("first");
    }

    @Test
    void theSameScoringGivesTheSameRanksAndPoints() throws IOException {
        assertThat(anew(Path.of("config", "scoring.yaml")).exitCode()).isZero();

        assertThat(standings(folder.resolve("anew"))).isEqualTo(standings(runs.resolve("first")));
    }

    @Test
    void anotherScoringGivesWhatARunWithItGives() throws IOException {
        Path scoring = folder.resolve("mine.yaml");
        Files.writeString(scoring, """
                criteria:
                  room_gained: {weight_ratio: 0.1}
                  ease_bends: {weight_ratio: 0.7, curve: {0: 1, 45: 0}}
                  saving: {weight_ratio: 0}
                gates:
                  empty_duct_in_bank: false
                """);

        CommandRun anew = anew(scoring);
        rank("whole", "--scoring", scoring.toString());

        assertThat(anew.exitCode()).as(anew.err()).isZero();
        assertThat(anew.out()).contains("The best:");
        List<List<String>> expected = standings(runs.resolve("whole"));
        assertThat(standings(folder.resolve("anew"))).isEqualTo(expected);
        assertThat(expected).isNotEqualTo(standings(runs.resolve("first")));
    }

    /** The folder is a run: it can be compared and explained. */
    @Test
    void theNewFolderIsARunOfItsOwn() throws IOException {
        Path scoring = folder.resolve("mine.yaml");
        Files.writeString(scoring, "criteria:\n  ease_bends: {weight_ratio: 2}\n");
        anew(scoring);
        Path anew = folder.resolve("anew");

        CommandRun compared = CommandRun.of(
                "compare",
                runs.resolve("first").toString(),
                anew.toString(),
                "--output",
                folder.resolve("moves").toString());
        String best = standings(anew).get(0).get(0);
        CommandRun explained = CommandRun.of("explain", best, "--run", anew.toString());

        assertThat(compared.out()).contains("config scoring.criteria.ease_bends.weight_ratio: 0.05 to 2.0");
        assertThat(explained.out()).startsWith("Span " + best + "\n  standing          rank 1 of ");
        assertThat(explained.exitCode()).isZero();
    }

    @Test
    void whatWouldNeedAnotherRunIsRefused() throws IOException {
        Path scoring = folder.resolve("mine.yaml");
        Files.writeString(scoring, "criteria:\n  length: {weight_ratio: 1}\nunknown_consent_excludes: true\n");

        CommandRun refused = anew(scoring);

        assertThat(refused.exitCode()).isEqualTo(ExitCode.INPUT);
        assertThat(refused.complaint()).contains("make the run again").hasLineCount(1);
    }

    @Test
    void withoutAScoringItIsAWrongUse() {
        CommandRun refused =
                CommandRun.of("rank", "--from", runs.resolve("first").toString());

        assertThat(refused.exitCode()).isEqualTo(ExitCode.USAGE);
        assertThat(refused.err()).contains("--from needs --scoring FILE");
    }

    private CommandRun anew(Path scoring) {
        return CommandRun.of(
                "rank",
                "--from",
                runs.resolve("first").toString(),
                "--scoring",
                scoring.toString(),
                "--output",
                folder.resolve("anew").toString());
    }

    private static void rank(String name, String... more) {
        var words = new ArrayList<>(List.of(
                "rank",
                "--config",
                CONFIG.toString(),
                "--no-uncertainty",
                "--formats",
                "csv,geopackage",
                "--output",
                runs.resolve(name).toString()));
        words.addAll(List.of(more));
        CommandRun ranked = CommandRun.of(words.toArray(String[]::new));
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
    }

    /** Returns id, rank, score, reasons and cautions of every span, in file order. */
    private static List<List<String>> standings(Path run) throws IOException {
        var format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (var parser = format.parse(Files.newBufferedReader(run.resolve("spans.csv")))) {
            return parser.getRecords().stream()
                    .map(row -> {
                        Map<String, String> cells = row.toMap();
                        return List.of(
                                cells.getOrDefault("span_id", "-"),
                                cells.getOrDefault("rank", "-"),
                                cells.getOrDefault("score_points", "-"),
                                cells.getOrDefault("exclusions", "-"),
                                cells.getOrDefault("cautions", "-"),
                                cells.getOrDefault("ease_bends_points", "-"));
                    })
                    .toList();
        }
    }
}
