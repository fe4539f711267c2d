package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.bore.Room;
import org.spanroom.model.permit.ZoneRule;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.rank.Unknown;

/** Holds the glossary to the keys of the program: every key has a row of its part, and no part has a row without a key. */
class GlossaryTest {
    private static final Path PAGE = Path.of("src/site/markdown/glossary.md");

    static List<Map.Entry<String, Set<String>>> parts() throws IOException {
        Set<String> zones = keys(ZoneRule.values(), ZoneRule::key);
        JsonNode kinds = new YAMLMapper()
                .readTree(Path.of("config/permits.yaml").toFile())
                .get("kinds");
        kinds.fieldNames().forEachRemaining(zones::add);
        return List.of(
                Map.entry("Gates and exclusions", names(Gate.values())),
                Map.entry("Cautions", keys(CautionKind.values(), CautionKind::key)),
                Map.entry("Criteria", names(Criterion.values())),
                Map.entry("Limits of a pull", keys(LimitKind.values(), LimitKind::key)),
                Map.entry("Permit zones", zones),
                Map.entry("Unknowns", keys(Unknown.values(), Unknown::key)),
                Map.entry("Findings", names(FindingCode.values())),
                Map.entry("Rules of room", rulesOfRoom()));
    }

    @ParameterizedTest
    @MethodSource("parts")
    void everyKeyHasItsRow(Map.Entry<String, Set<String>> part) throws IOException {
        Set<String> rows = new TreeSet<>();
        for (String line : part(part.getKey())) {
            if (line.startsWith("| `")) {
                String[] cells = line.split("\\|", -1);
                rows.add(cells[1].replace("`", "").strip());
                assertThat(cells[cells.length - 2].strip()).as(line).isNotEmpty();
            }
        }
        assertThat(rows).isEqualTo(part.getValue());
    }

    /** What the screens and the findings call a key, word for word. */
    static Stream<Map.Entry<String, String>> meanings() {
        return Stream.concat(
                Arrays.stream(FindingCode.values()).map(code -> Map.entry(code.key(), code.meaning())),
                Arrays.stream(LimitKind.values()).map(kind -> Map.entry(kind.key(), kind.meaning())));
    }

    @ParameterizedTest
    @MethodSource("meanings")
    void aKeyMeansTheSameInTheGlossaryAndOnTheScreen(Map.Entry<String, String> key) throws IOException {
        assertThat(Files.readAllLines(PAGE))
                .anyMatch(line ->
                        line.startsWith("| `" + key.getKey() + "` |") && line.endsWith("| " + key.getValue() + " |"));
    }

    /** Words of the printed summary, the tables, the drawing and the help texts, each of them an entry. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "anchor end",
                "anchor vault",
                "alternative",
                "better end",
                "binding section",
                "bound",
                "build",
                "can begin",
                "connection",
                "cost share",
                "binding rule",
                "bore fill",
                "breakaway",
                "candidate",
                "caution",
                "cell",
                "choice",
                "criterion",
                "circuits at risk",
                "crew-hours",
                "design cable",
                "draws of the rates",
                "duct mouth",
                "exclusion",
                "feasible chance",
                "field check",
                "finding",
                "fits",
                "free bore",
                "friction state",
                "free",
                "gap",
                "gate",
                "hold",
                "innerduct",
                "jam ratio",
                "kept field",
                "knowledge",
                "labor hours",
                "mid-span splice",
                "lead time",
                "likely",
                "limit",
                "low",
                "must",
                "neighbor",
                "new build",
                "objective",
                "P10-P90 of the score",
                "permit zone",
                "points",
                "position quality",
                "position",
                "proof",
                "pull",
                "rank",
                "recover",
                "recovery",
                "remainder",
                "reserved position",
                "run date",
                "saving",
                "scenario",
                "score",
                "section",
                "sidewall pressure",
                "slack",
                "sleeve",
                "span",
                "spare duct",
                "stratum",
                "sweep",
                "test pull",
                "tightest limit",
                "to fix",
                "top chance",
                "truckload",
                "upcoming zone",
                "utilization",
                "vertical radius",
                "vault",
                "vault survey",
                "wander",
                "way"
            })
    void everyTermOfTheScreenHasAnEntry(String term) throws IOException {
        Set<String> terms = new TreeSet<>();
        for (String line : Files.readAllLines(PAGE)) {
            if (line.startsWith("| ") && !line.startsWith("| `")) {
                String cell = line.split("\\|", -1)[1].strip();
                Arrays.stream(cell.replaceAll(" \\(.*", "").split(", ", -1))
                        .map(String::strip)
                        .forEach(terms::add);
            }
        }
        assertThat(terms).contains(term);
    }

    /** Sorted, so that a term is found without a search. */
    @Test
    void termsStandInOrder() throws IOException {
        for (String name : List.of(
                "Plant",
                "Data",
                "Room",
                "Pulling",
                "Work, permits and money",
                "Ranking and confidence",
                "Ways and connections")) {
            List<String> terms = part(name).stream()
                    .filter(line -> line.startsWith("| ") && !line.startsWith("| term"))
                    .map(line -> line.split("\\|", -1)[1].strip().toLowerCase(Locale.ROOT))
                    .toList();
            assertThat(terms).as(name).isNotEmpty().isSorted();
        }
    }

    private static List<String> part(String heading) throws IOException {
        List<String> lines = Files.readAllLines(PAGE);
        int from = lines.indexOf("## " + heading);
        assertThat(from).as(heading).isNotNegative();
        List<String> rest = lines.subList(from + 1, lines.size());
        return rest.stream().takeWhile(line -> !line.startsWith("## ")).toList();
    }

    private static Set<String> rulesOfRoom() {
        return Arrays.stream(Room.class.getFields())
                .filter(field -> field.getType() == String.class)
                .map(field -> field.getName().toLowerCase(Locale.ROOT))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static Set<String> names(Enum<?>[] values) {
        return keys(values, value -> value.name().toLowerCase(Locale.ROOT));
    }

    private static <T> Set<String> keys(T[] values, Function<T, String> key) {
        return Arrays.stream(values).map(key).collect(Collectors.toCollection(TreeSet::new));
    }
}
