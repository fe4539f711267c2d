package org.spanroom.output.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.SpanExplanationSample;

/** What is shown of the vaults at both ends of a span, and of the duct there. */
class ExplanationVaultTest {
    private final SpanExplanation explained = SpanExplanationSample.recordedAtA();

    /** Returns the lines of a section, each with its blanks made one. */
    private static List<String> section(String text, String title) {
        List<String> lines = text.lines().toList();
        int start = lines.indexOf(title);
        assertTrue(start >= 0, text);
        return lines.subList(start + 1, lines.size()).stream()
                .takeWhile(line -> !line.isBlank())
                .map(line -> line.strip().replaceAll(" {2,}", ": "))
                .toList();
    }

    @Test
    void everyFactOfAVaultAndWhatFollowsIsShown() {
        assertEquals(
                List.of(
                        "kind: maintenance hole",
                        "depth from cover to floor: 2.44 m",
                        "inside: length 3.00 m, width 2.50 m, height 1.80 m",
                        "opening under the cover: 762.00 mm",
                        "volume: 13.50 m3 (inside size)",
                        "standing water: yes",
                        "surface around the cover: roadway",
                        "gas found before: yes",
                        "shared with power cables: no",
                        "last inspected: 2025-11-03",
                        "hole of the duct: 2/3",
                        "slack of each live cable: 6.10 m (of this duct)",
                        "ventilate before entry at least: 10.0 min",
                        "air tests: before entry, after pumping, each duct mouth, continuously",
                        "longest time between air tests: 8.0 h",
                        "forced air: yes (roadway, gas found)",
                        "permit to discharge water: yes",
                        "lane closure: yes",
                        "confined-space entry: yes"),
                section(SpanExplanationSample.text(explained), "Vault V-1 at A"));
    }

    /** Unknown is said so, with what is missing; and crews do not enter a handhole. */
    @Test
    void whatIsNotRecordedIsSaidSo() {
        assertEquals(
                List.of(
                        "kind: handhole",
                        "depth from cover to floor: recorded as 'deep' but rejected: 'deep' is not a valid number",
                        "inside: not recorded",
                        "opening under the cover: not recorded",
                        "volume: not recorded",
                        "standing water: not recorded",
                        "surface around the cover: not recorded",
                        "gas found before: not recorded",
                        "shared with power cables: not recorded",
                        "last inspected: not recorded",
                        "hole of the duct: not recorded",
                        "slack of each live cable: 4.00 m (of the vault)",
                        "ventilate before entry at least: crews do not enter",
                        "air tests: none",
                        "longest time between air tests: crews do not enter",
                        "forced air: no (not entered)",
                        "permit to discharge water: water not recorded",
                        "lane closure: surface not recorded",
                        "confined-space entry: no"),
                section(SpanExplanationSample.text(explained), "Vault V-2 at B"));
    }

    @Test
    void peopleReadTheirUnits() {
        String text = ExplanationText.write(Explanation.of(explained, UnitSystem.US));

        List<String> lines = section(text, "Vault V-1 at A");
        assertTrue(lines.contains("depth from cover to floor: 8.00 ft"), text);
        assertTrue(lines.contains("slack of each live cable: 20.00 ft (of this duct)"), text);
        assertTrue(lines.stream().anyMatch(line -> line.matches("opening under the cover: 30\\.0+ in")), text);
        assertTrue(lines.stream().anyMatch(line -> line.matches("volume: 476\\.7 ft3 .*")), text);
    }

    @Test
    void programsGetNumbersWordsAndNulls() throws JsonProcessingException {
        JsonNode json = new ObjectMapper().readTree(SpanExplanationSample.json(explained));

        JsonNode a = json.at("/vault_a");
        assertEquals(2.44, a.at("/depth_m").asDouble());
        assertEquals("inside size", a.at("/volume_m3_evidence").asText());
        assertEquals("2/3", a.at("/hole").asText());
        assertEquals(6.10, a.at("/slack_m").asDouble());
        assertTrue(a.at("/forced_air").asBoolean());
        assertEquals("gas_found", a.at("/forced_air_why/1").asText());
        JsonNode b = json.at("/vault_b");
        for (String key : List.of("depth_m", "hole", "volume_m3", "gas_found", "purge_minutes", "lane_closure")) {
            assertTrue(b.has(key) && b.get(key).isNull(), key);
        }
        JsonNode innerduct = json.at("/duct/innerducts/0");
        assertEquals("orange", innerduct.at("/color").asText());
        assertEquals("yes", innerduct.at("/uncut_at_a").asText());
        assertEquals("no", innerduct.at("/uncut_at_b").asText());
        assertEquals("FO-12", innerduct.at("/cables/0/tag").asText());
    }

    @Test
    void innerductsAndCablesCarryWhatCrewsKnowThemBy() {
        String text = SpanExplanationSample.text(explained).replaceAll("\\s+", " ");

        assertTrue(text.contains("wall 3.12 mm, color orange, uncut at A yes, uncut at B no, cables:"), text);
        assertTrue(text.contains("cable c1, tag FO-12, outside diameter"), text);
        String plain = SpanExplanationSample.text(SpanExplanationSample.workedExample());
        assertTrue(!plain.contains("color") && !plain.contains("tag") && !plain.contains("uncut"), plain);
    }

    /** Where no needs were found out, nothing is claimed. */
    @Test
    void withoutNeedsNothingIsClaimed() {
        List<String> lines = section(SpanExplanationSample.text(SpanExplanationSample.failing()), "Vault V-1 at A");

        assertTrue(lines.contains("forced air: not recorded"), lines::toString);
        assertTrue(lines.contains("confined-space entry: kind not recorded"), lines::toString);
    }
}
