package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code --json} and {@code --quiet}: what programs read agrees with what the run recorded, and nothing else is printed. */
class SummaryJsonTest {
    private static final ObjectMapper JSON = new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
    private static final Path PAGE = Path.of("src", "site", "markdown", "json-summaries.md");

    @TempDir
    static Path folder;

    private static CommandRun rank;

    @BeforeAll
    static void makeARun() {
        assertThat(CommandRun.of("sample", "--spans", "400", "--output", at("city"), "--quiet"))
                .isEqualTo(new CommandRun(ExitCode.OK, "", ""));
        rank = CommandRun.of("rank", "--config", at("city/spanroom.yaml"), "--output", at("run"), "--json");
        assertThat(rank.exitCode()).as(rank.err()).isZero();
    }

    /** The record of the run is written by other code. */
    @Test
    void rankAgreesWithTheRecordOfTheRun() throws IOException {
        JsonNode json = JSON.readTree(rank.out());
        JsonNode record = JSON.readTree(Files.readString(folder.resolve("run").resolve("run.json")));

        for (String name : List.of(
                "spans",
                "spans_ranked",
                "spans_ranked_doubtful",
                "spans_ranked_tight_bend",
                "spans_excluded",
                "findings",
                "findings_by_code",
                "money_ranked",
                "notes",
                "version")) {
            assertThat(json.get(name)).as(name).isNotNull().isEqualTo(record.get(name));
        }
        assertThat(json.get("money_ranked").get("saving_likely_money").isNumber())
                .isTrue();
        assertThat(json.get("best").get(0).get("rank").asInt()).isEqualTo(1);
        assertThat(json.get("folder").asText()).isEqualTo(at("run"));
        var files = new TreeSet<String>();
        json.get("files").forEach(file -> files.add(file.asText()));
        assertThat(files)
                .contains("run.json", "spanroom.gpkg")
                .allSatisfy(
                        file -> assertThat(folder.resolve("run").resolve(file)).exists());
        assertThat(json.get("cautions").get(0).asText()).contains("do not authorize");
        assertThat(rank.err()).contains("assess spans", "find field checks", "form sections");
    }

    @Test
    void checkCompareAndRankFromAreObjectsToo() throws IOException {
        JsonNode check = json("check", "--config", at("city/spanroom.yaml"));
        JsonNode all = json("check", "--config", at("city/spanroom.yaml"), "--all", "--quiet");
        JsonNode again = json("rank", "--from", at("run"), "--scoring", "config/scoring.yaml", "--output", at("again"));
        JsonNode compare = json("compare", at("run"), at("again"), "--output", at("moves"));
        JsonNode ranked = JSON.readTree(rank.out());

        assertThat(check.get("spans")).isEqualTo(ranked.get("spans"));
        assertThat(check.get("findings_by_code").size()).isPositive();
        assertThat(check.has("findings_listed")).isFalse();
        long listed = 0;
        for (JsonNode finding : all.get("findings_listed")) {
            listed += finding.get("count").asLong();
        }
        assertThat(listed).isEqualTo(all.get("findings").asLong());
        assertThat(again.get("spans_ranked")).isEqualTo(ranked.get("spans_ranked"));
        assertThat(compare.get("spans_moved").asLong()
                        + compare.get("spans_unmoved").asLong())
                .isEqualTo(ranked.get("spans").asLong());
    }

    /** Keys are part of the interface: snake case, unit last, and each is explained. */
    @Test
    void everyKeyIsExplainedOnThePage() throws IOException {
        var keys = new TreeSet<String>();
        collect(JSON.readTree(rank.out()), keys);
        collect(json("check", "--config", at("city/spanroom.yaml"), "--all"), keys);
        collect(json("compare", at("run"), at("run"), "--output", at("same")), keys);
        var vaults = new ArrayList<String>();
        spans(1).forEach(row -> vaults.addAll(List.of(row.get("vault_a"), row.get("vault_b"))));
        String[] ends = {"--from", vaults.get(0), "--to", vaults.get(1)};
        collect(
                json("path", at("run"), ends[0], ends[1], ends[2], ends[3], "--cables", "1", "--output", at("path")),
                keys);
        collect(json("corridors", at("run"), "--output", at("corridors")), keys);
        Path table = Files.writeString(
                folder.resolve("connections.csv"),
                "name,from,to,cables\na," + vaults.get(0) + "," + vaults.get(1) + ",1\nb,x,y,1\n");
        collect(
                json(
                        "connect",
                        at("run"),
                        "--connections",
                        table.toString(),
                        "--output",
                        at("connect"),
                        "--iterations",
                        "9"),
                keys);
        Path config = Files.writeString(folder.resolve("program.yaml"), "years: [{money: 20000}]\n");
        collect(
                json(
                        "program",
                        at("run"),
                        "--config",
                        config.toString(),
                        "--output",
                        at("program"),
                        "--skip",
                        "curve,prices,draws"),
                keys);
        collect(json("report", at("run"), "--output", at("page.html"), "--details", "5"), keys);
        collect(json("learn", "--run", at("run"), "--field-book", book(), "--output", at("learned")), keys);
        collect(json("sheets", at("run"), "--output", at("sheets"), "--top", "2"), keys);
        String page = Files.readString(PAGE);

        assertThat(keys).hasSizeGreaterThan(40).allSatisfy(key -> {
            assertThat(key).matches("[a-z]+(_[a-z]+)*");
            assertThat(page).contains("`" + key + "`");
        });
    }

    private static List<CSVRecord> spans(int count) throws IOException {
        CSVFormat header = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (var spans =
                header.parse(Files.newBufferedReader(folder.resolve("run").resolve("spans.csv")))) {
            return spans.stream().limit(count).toList();
        }
    }

    /** Writes a field book in which three spans report everything that is learned from, and returns its name. */
    private static String book() throws IOException {
        var text = new StringBuilder(
                "format,entry,run,span,vault,fact,item,planned,value,unit,by,date,supersedes,note,entered\n");
        int entry = 0;
        for (CSVRecord span : spans(3)) {
            for (String fact : List.of(
                    "status,,,done,",
                    "step_hours,sealing,0.2,0.3,h",
                    "cables_found,,1,2,",
                    "duct_condition,,,sound,",
                    "pull_force,innerduct-1,,500,N",
                    "innerduct_mass,,90,100,kg",
                    "recycled_mass,,70,80,kg",
                    "sleeve_cells,S1,,3,",
                    "cost,,9000,10000,money")) {
                entry++;
                text.append(
                        "1," + entry + ",x," + span.get("span_id") + ",," + fact + ",crew,2027-06-30,,,2027-07-01\n");
            }
        }
        return Files.writeString(folder.resolve("book.csv"), text).toString();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rank --config %/city/spanroom.yaml --output %/run --overwrite --formats gpkg,csv",
                "--quiet rank --config %/city/spanroom.yaml --output %/run --overwrite",
                "compare %/run %/run --output %/quiet --overwrite",
                "rank --from %/run --scoring config/scoring.yaml --output %/quiet-again --overwrite"
            })
    void quietPrintsNothing(String line) {
        var words = new ArrayList<>(List.of(line.replace("%", folder.toString()).split(" ", -1)));
        if (!words.contains("--quiet")) {
            words.add("--quiet");
        }

        assertThat(CommandRun.of(words.toArray(String[]::new))).isEqualTo(new CommandRun(ExitCode.OK, "", ""));
    }

    /** Quiet leaves out neither errors nor what was asked for. */
    @Test
    void quietStillAnswersAndComplains() {
        CommandRun check = CommandRun.of("check", "--config", at("city/spanroom.yaml"), "--quiet");
        CommandRun explain = CommandRun.of("explain", "--rank", "1", "--run", at("run"), "--quiet");
        CommandRun wrong = CommandRun.of("check", "--config", at("none.yaml"), "--quiet");

        assertThat(check.out()).contains("findings");
        assertThat(explain.out()).startsWith("Span ");
        assertThat(check.err() + explain.err()).isEmpty();
        assertThat(wrong.err()).startsWith("spanroom: ").contains("none.yaml");
    }

    private static JsonNode json(String... arguments) throws IOException {
        var all = new ArrayList<>(List.of(arguments));
        all.add("--json");
        CommandRun run = CommandRun.of(all.toArray(String[]::new));
        assertThat(run.exitCode()).as(run.err()).isZero();
        return JSON.readTree(run.out());
    }

    /** Codes and reasons are data, not keys of ours. */
    private static void collect(JsonNode node, Set<String> keys) {
        node.properties().forEach(member -> {
            keys.add(member.getKey());
            if (!Set.of("findings_by_code", "spans_excluded", "moves_by_cause").contains(member.getKey())) {
                collect(member.getValue(), keys);
            }
        });
        if (node.isArray()) {
            node.forEach(item -> collect(item, keys));
        }
    }

    private static String at(String name) {
        return folder.resolve(name).toString();
    }
}
