package org.spanroom.output.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.NoSuchElementException;
import org.junit.jupiter.api.Test;

/** The rules by which any tree is rendered, on small trees. */
class ExplanationRenderingTest {
    @Test
    void labelsOfASectionStandInOneColumn() {
        var parts = new ExplanationParts()
                .number("length_m", "length", 12.3456, 3, "m")
                .word("bore_shape", "shape of the bore", "half_round")
                .flag("wet", "wet", false)
                .number("wall_mm", "wall", 3, 1, "mm")
                .because("assumed");

        assertThat(text(parts)).isEqualTo("""
                Title
                  length             12.346 m
                  shape of the bore  half round
                  wet                no
                  wall               3.0 mm (assumed)
                """);
        assertThat(json(parts)).isEqualTo("""
                        {
                          "length_m" : 12.346,
                          "bore_shape" : "half_round",
                          "wet" : false,
                          "wall_mm" : 3.0,
                          "wall_mm_evidence" : "assumed"
                        }
                        """);
    }

    @Test
    void peopleAreSparedWhatHasNoLabelOrValueAndProgramsWhatHasNoKey() {
        var parts = new ExplanationParts()
                .text("unit", "", "m")
                .text("", "in words", "two")
                .number("length_m", "length", Double.NaN, 1, "m");

        assertThat(text(parts)).isEqualTo("Title\n  in words  two\n");
        assertThat(json(parts)).isEqualTo("{\n  \"unit\" : \"m\",\n  \"length_m\" : null\n}\n");
    }

    @Test
    void aLineIsAnObjectForPrograms() {
        var parts = new ExplanationParts()
                .line(
                        "from",
                        "from",
                        line -> line.text("vault", "vault", "V-1")
                                .table(
                                        "cables",
                                        "cables",
                                        List.of("c1", "c2"),
                                        (row, id) ->
                                                row.text("cable", "cable", id).number("mass_kg", "mass", 2, 1, "kg")));

        assertThat(text(parts))
                .isEqualTo("Title\n  from  vault V-1, cables: cable c1, mass 2.0 kg; cable c2, mass 2.0 kg\n");
        assertThat(json(parts)).startsWith("""
                {
                  "from" : {
                    "vault" : "V-1",
                    "cables" : [
                      {
                        "cable" : "c1",
                """);
    }

    /** Numbers of one unit have the same decimals, five digits for the largest; exact ones have their points in one column. */
    @Test
    void numbersOfATableAreAlike() {
        var parts = new ExplanationParts()
                .table(
                        "forces",
                        "Forces",
                        List.of(1.25, 12774.03),
                        (row, forceN) -> row.number("pull_n", "pull out", forceN, 2, "N")
                                .number("ratio", "ratio", forceN / 4, 4, "")
                                .flag("fails", "fails", forceN > 100));

        assertThat(text(parts)).isEqualTo("""
                Title
                  Forces
                      pull
                       out
                         N      ratio  fails
                         1     0.3125
                    12,774  3193.5     yes
                """);
    }

    @Test
    void unitsThatDifferStandInTheCells() {
        var parts = new ExplanationParts()
                .table(
                        "limits",
                        "",
                        List.of("N", "m"),
                        (row, unit) -> row.text("limit", "limit", "of " + unit)
                                .number("found_in_unit", "found", 2.5, 1, unit));

        assertThat(text(parts)).isEqualTo("Title\n  limit  found\n  of N   2.5 N\n  of m   2.5 m\n");
    }

    @Test
    void rowsAreGroupedByTheirFirstCell() {
        var parts = new ExplanationParts()
                .groups(
                        "lines",
                        List.of("b1", "a1", "b2"),
                        (row, word) ->
                                row.text("kind", "kind", word.substring(0, 1)).text("row", "row", word));

        assertThat(text(parts)).isEqualTo("Title\n  b\n    row\n    b1\n    b2\n  a\n    row\n    a1\n");
        assertThat(json(parts)).containsSubsequence("\"b1\"", "\"a1\"", "\"b2\"");
    }

    @Test
    void aPathOfKeysLeadsThroughSectionsWithoutKey() {
        var room = new ExplanationParts().whole("sleeves", "sleeves", 3).section("room", "Room");
        var all = new ExplanationParts().add(room).section("", "All");
        var tree = new ExplanationParts().add(all).section("", "Span");

        assertThat(tree.words("room/sleeves")).isEqualTo("3");
        assertThat(tree.number("room/sleeves")).isEqualTo(3);
        assertThatThrownBy(() -> tree.words("room/cables"))
                .isInstanceOf(NoSuchElementException.class)
                .hasMessageContaining("'cables'");
    }

    /** A label that is wider than the column of labels pushes its value on, and the others stay in their column. */
    @Test
    void aLongLabelAndItsValueAreTwoBlanksApart() {
        for (int length = 35; length < 60; length++) {
            String label = "x".repeat(length);

            assertThat(text(new ExplanationParts().text("a", "short", "one").text("b", label, "two")))
                    .contains(label + "  two");
        }
    }

    private static String text(ExplanationParts parts) {
        return ExplanationText.write(parts.section("", "Title"));
    }

    private static String json(ExplanationParts parts) {
        return ExplanationJson.write(parts.section("", "Title"));
    }
}
