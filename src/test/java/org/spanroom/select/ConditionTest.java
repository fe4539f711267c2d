package org.spanroom.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.finding.UsageException;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.table.Column;

/** Conditions as OGC's Common Query Language has them (OGC 07-006r1, 6.2.2, from memory), on rows of four kinds of cells. */
class ConditionTest {
    private static final Map<String, Class<?>> TYPES =
            Map.of("rank", Long.class, "length_m", Double.class, "spare", Boolean.class, "duct", String.class);

    private static Optional<Object> cell(String name) {
        return Optional.of(Map.<String, Object>of("rank", 7L, "length_m", 80.5, "spare", false, "duct", "B1'8")
                .get(name));
    }

    private static Condition parse(String text) {
        return Condition.parse(text, TYPES, wrong -> "did you mean?");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "rank <= 7|true",
                "rank < 7|false",
                "rank <> 7|false",
                "rank < 7.5|true",
                "7 >= rank|true",
                "length_m = 80.5|true",
                "length_m BETWEEN 80 AND 81|true",
                "length_m + rank > 87|true",
                "spare = false|true",
                "spare = true|false",
                "NOT spare = true|true",
                "duct = 'B1''8'|true",
                "duct LIKE 'B1%'|true",
                "duct LIKE 'b1%'|false",
                "duct ILIKE 'b1%'|true",
                "duct IN ('A', 'B1''8')|true",
                "duct IS NULL|false",
                "duct IS NOT NULL|true",
                "rank = 7 AND length_m > 90|false",
                "rank = 7 OR length_m > 90|true",
                "INCLUDE|true",
                "EXCLUDE|false"
            })
    void aRowMeetsAConditionOrNot(String text, boolean met) {
        assertThat(parse(text).holds(ConditionTest::cell)).isEqualTo(met);
    }

    @ParameterizedTest
    @ValueSource(strings = {"rank <= 7", "rank > 7", "length_m = 0", "spare = false", "duct = ''", "duct LIKE '%'"})
    void noComparisonWithAnEmptyCellIsMet(String text) {
        assertThat(parse(text).holds(name -> Optional.empty())).isFalse();
        assertThat(parse("duct IS NULL").holds(name -> Optional.empty())).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "rank",
                "rank <=",
                "rank <= <= 3",
                "((((",
                "rank = 'seven'",
                "length_m > 'x'",
                "spare = 'maybe'",
                "rank BETWEEN 'a' AND 3",
                "rnak = 1",
                "NOT rnak = 1",
                "rnak LIKE 'a'",
                "rnak IS NULL",
                "rnak IN (1, 2)",
                "3 > rnak",
                "rank + rnak > 3",
                "strLength(rnak) > 3",
                "nosuch(rank) > 3",
                "IN ('a')",
                "BBOX(geom, 1, 2, 3, 4)",
                "duct = 'open",
                "rank = 1; DROP TABLE spans",
                "\u0000"
            })
    void whatCannotBeUsedIsRefusedInOneLine(String text) {
        assertThatThrownBy(() -> parse(text))
                .isInstanceOf(UsageException.class)
                .message()
                .startsWith("--where")
                .doesNotContain("\n");
    }

    @Test
    void depthEndsInAMessageAndNotInAnOverflow() {
        String deep = "(".repeat(200_000) + "rank = 1" + ")".repeat(200_000);

        assertThatThrownBy(() -> parse(deep)).isInstanceOf(UsageException.class).hasMessageStartingWith("--where");
    }

    /** No name of a column is a word of the language, so that none must be quoted. */
    @Test
    void everyColumnOfTheSpansCanBeAskedFor() {
        for (Column<?> column : SpanColumns.table(SpanLayout.PLAIN).columns()) {
            var condition = Condition.parse(
                    column.name() + " IS NULL", Map.of(column.name(), String.class), wrong -> "did you mean?");

            assertThat(condition.holds(name -> Optional.empty())).isTrue();
            assertThat(condition.holds(name -> Optional.of("x"))).isFalse();
        }
    }

    /** By the grammar of CQL, OGC 07-006r1: a comparison has two sides, AND has two conditions, a parenthesis is closed. */
    @ParameterizedTest
    @ValueSource(
            strings = {"rank <=", "rank", "rank > 1 AND", "duct LIKE", "rank BETWEEN 1", "rank IN (1", "(rank > 1"})
    void aConditionThatBreaksOffSaysSo(String text) {
        assertThatThrownBy(() -> parse(text))
                .isInstanceOf(UsageException.class)
                .hasMessageStartingWith("--where cannot be read: the condition ends too early. It is ECQL")
                .hasMessageEndingWith(text)
                .hasMessageNotContaining("EOF");
    }

    @Test
    void aWordTooManyAtTheEndIsNotAnEarlyEnd() {
        assertThatThrownBy(() -> parse("rank > 1 5")).hasMessageNotContaining("too early");
    }

    @Test
    void aLongConditionIsNotRepeated() {
        String text = "rank > 1 AND '" + "x".repeat(5_000);

        assertThatThrownBy(() -> parse(text))
                .isInstanceOf(UsageException.class)
                .extracting(problem -> problem.getMessage().length())
                .matches(length -> length < 1000);
    }

    /** The parser calls itself for each level. The message is short, whatever the condition is. */
    @Test
    void aConditionThatIsNestedTooDeepIsRefusedInPlainWords() {
        String deep = "(".repeat(30_000) + "rank > 1" + ")".repeat(30_000);

        assertThatThrownBy(() -> parse(deep))
                .isInstanceOf(UsageException.class)
                .hasMessageContaining("--where cannot be read: ")
                .hasMessageNotContaining("null")
                .extracting(problem -> problem.getMessage().length())
                .matches(length -> length < 1000);
    }
}
