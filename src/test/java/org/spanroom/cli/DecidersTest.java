package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What decides most of the candidates of the demo city, counted in its own table of spans; and of the same city without sizes of ducts. */
class DecidersTest {
    @TempDir
    Path folder;

    @Test
    void oneRuleAndOneLimitDecideMostOfTheDemo() throws IOException {
        List<String> said = said(Path.of("sample-gis", "spanroom.yaml"));
        List<CSVRecord> ranked = ranked();
        long rule = ranked.stream()
                .filter(row -> row.get("binding_rule").equals("sleeves_per_duct"))
                .count();
        long limit = ranked.stream()
                .filter(row -> row.get("pull_tightest_limit").equals("innerduct_strength"))
                .count();

        assertThat(2 * rule).isGreaterThan(ranked.size());
        assertThat(2 * limit).isGreaterThan(ranked.size());
        assertThat(said)
                .containsExactly(
                        String.format(
                                Locale.ROOT,
                                "In %,d of %,d candidates, the rule for sleeves by duct size (room.sleeves_by_duct) sets the room",
                                rule,
                                ranked.size()),
                        String.format(
                                Locale.ROOT,
                                "In %,d of %,d candidates, the limit of the pull that comes closest is innerduct tension",
                                limit,
                                ranked.size()));
    }

    @Test
    void sizesThatAreAssumedAreNamedFirst() throws IOException {
        String demo = Files.readString(Path.of("sample-gis", "spanroom.yaml"));
        String without = demo.replaceFirst("(?m)^ *inside_diameter:.*\n", "");
        assertThat(without).isNotEqualTo(demo);
        Path city = Files.createDirectory(folder.resolve("city"));
        try (Stream<Path> files = Files.list(Path.of("sample-gis"))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, city.resolve(file.getFileName()));
            }
        }
        Path config = Files.writeString(city.resolve("without.yaml"), without);

        List<String> said = said(config);
        List<CSVRecord> ranked = ranked();
        long assumed = ranked.stream()
                .filter(row -> List.of(row.get("assumed").split(";")).contains("inside_diameter"))
                .count();

        assertThat(assumed).isGreaterThan(ranked.size() * 9L / 10);
        assertThat(said.get(0))
                .isEqualTo(String.format(
                        Locale.ROOT,
                        "In %,d of %,d candidates, the inside diameter is assumed, since no usable one is recorded; their room"
                                + " rests on that",
                        assumed,
                        ranked.size()));
    }

    private List<String> said(Path config) throws IOException {
        CommandRun run = CommandRun.of(
                "rank",
                "--config",
                config.toString(),
                "--output",
                folder.resolve("run").toString(),
                "--no-uncertainty",
                "--columns",
                "all",
                "--formats",
                "csv",
                "--json");
        assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.OK);
        JsonNode deciders = new ObjectMapper().readTree(run.out()).path("deciders");
        return new ObjectMapper()
                .convertValue(
                        deciders,
                        new ObjectMapper().getTypeFactory().constructCollectionType(List.class, String.class));
    }

    private List<CSVRecord> ranked() throws IOException {
        try (var parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(folder.resolve("run").resolve("spans.csv")))) {
            return parser.stream().filter(row -> !row.get("rank").isEmpty()).toList();
        }
    }
}
