package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.NoSuchElementException;
import org.junit.jupiter.api.Test;
import org.spanroom.output.explain.ExplanationItem;
import org.spanroom.output.explain.ExplanationJson;
import org.spanroom.output.explain.ExplanationLine;
import org.spanroom.output.explain.ExplanationPart;
import org.spanroom.output.explain.ExplanationSection;
import org.spanroom.output.explain.ExplanationTable;
import org.spanroom.output.explain.ExplanationText;

/** The rules by which any tree is rendered, on small trees. */
class ExplanationRenderingTest {
    private static final ExplanationPart CABLES = ExplanationTable.of(
            "cables",
            "cables",
            List.of("c1", "c2"),
            id -> List.of(
                    ExplanationItem.text("cable", "cable", id), ExplanationItem.number("mass_kg", "mass", 2, 1, "kg")));

    @Test
    void labelsOfASectionStandInOneColumn() {
        assertThat(text(
                        ExplanationItem.number("length_m", "length", 12.3456, 3, "m"),
                        ExplanationItem.word("bore_shape", "shape of the bore", "half_round"),
                        ExplanationItem.flag("wet", "wet", false),
                        ExplanationItem.number("wall_mm", "wall", 3, 1, "mm").withEvidence("assumed")))
                .isEqualTo("""
                        Title
                          length             12.346 m
                          shape of the bore  half round
                          wet                no
                          wall               3.0 mm (assumed)
                        """);
    }

    @Test
    void peopleAreSparedWhatHasNoLabelOrValueAndProgramsWhatHasNoKey() {
        ExplanationPart[] parts = {
            ExplanationItem.text("unit", "", "m"),
            ExplanationItem.text("", "in words", "two"),
            ExplanationItem.number("length_m", "length", Double.NaN, 1, "m")
        };

        assertThat(text(parts)).isEqualTo("Title\n  in words  two\n");
        assertThat(json(parts)).isEqualTo("{\n  \"unit\" : \"m\",\n  \"length_m\" : null\n}\n");
    }

    @Test
    void aLineIsAnObjectForPrograms() {
        var line = new ExplanationLine("from", "from", List.of(ExplanationItem.text("vault", "vault", "V-1"), CABLES));

        assertThat(text(line))
                .isEqualTo("Title\n  from  vault V-1, cables: cable c1, mass 2.0 kg; cable c2, mass 2.0 kg\n");
        assertThat(json(line))
                .contains("\"from\" : {\n    \"vault\" : \"V-1\",\n    \"cables\" : [\n      {\n        \"cable\" :");
    }

    /** Numbers of one unit have the same decimals, five digits for the largest; exact ones have their points in one column. */
    @Test
    void numbersOfATableAreAlike() {
        var table = ExplanationTable.of(
                "forces",
                "Forces",
                List.of(1.25, 12774.03),
                force -> List.of(
                        ExplanationItem.number("pull_n", "pull out", force, 2, "N"),
                        ExplanationItem.number("ratio", "ratio", force / 4, 4, ""),
                        ExplanationItem.flag("fails", "fails", force > 100)));

        assertThat(text(table)).isEqualTo("""
                Title
                  Forces
                      pull
                       out      ratio  fails
                         N
                         1     0.3125
                    12,774  3193.5     yes
                """);
    }

    @Test
    void unitsThatDifferStandInTheCells() {
        var table = ExplanationTable.of(
                "limits",
                "",
                List.of("N", "m"),
                unit -> List.of(
                        ExplanationItem.text("limit", "limit", "of " + unit),
                        ExplanationItem.number("found_in_unit", "found", 2.5, 1, unit)));

        assertThat(text(table)).isEqualTo("Title\n  limit  found\n  of N   2.5 N\n  of m   2.5 m\n");
    }

    @Test
    void rowsAreGroupedByTheirFirstCell() {
        var table = ExplanationTable.of(
                        "lines",
                        "",
                        List.of("b1", "a1", "b2"),
                        row -> List.of(
                                ExplanationItem.text("kind", "kind", row.substring(0, 1)),
                                ExplanationItem.text("row", "row", row)))
                .asGroups();

        assertThat(text(table)).isEqualTo("Title\n  b\n    row\n    b1\n    b2\n  a\n    row\n    a1\n");
        assertThat(json(table)).containsSubsequence("\"b1\"", "\"a1\"", "\"b2\"");
    }

    @Test
    void aPathOfKeysLeadsThroughSectionsWithoutKey() {
        var room = new ExplanationSection("room", "Room", List.of(ExplanationItem.whole("sleeves", "sleeves", 3)));
        var tree = new ExplanationSection("", "Span", List.of(new ExplanationSection("", "All", List.of(room))));

        assertThat(tree.words("room/sleeves")).isEqualTo("3");
        assertThat(tree.number("room/sleeves")).isEqualTo(3);
        assertThatThrownBy(() -> tree.words("room/cables"))
                .isInstanceOf(NoSuchElementException.class)
                .hasMessageContaining("'cables'");
    }

    private static String text(ExplanationPart... parts) {
        return ExplanationText.write(new ExplanationSection("", "Title", List.of(parts)));
    }

    private static String json(ExplanationPart... parts) {
        return ExplanationJson.write(new ExplanationSection("", "Title", List.of(parts)));
    }
}
