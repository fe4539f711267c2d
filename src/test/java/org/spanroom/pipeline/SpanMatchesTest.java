package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SpanMatchesTest {
    @Test
    void aSpanWhoseLineIsTurnedAroundIsTheSameSpan() {
        SpanMatches matches = matches(List.of("d:A:B", "d:B:C:2", "e:A:B"), List.of("d:B:A", "d:C:B:2", "e:A:B"));

        assertThat(matches.firstId("d:B:A")).isEqualTo("d:A:B");
        assertThat(matches.firstId("d:C:B:2")).isEqualTo("d:B:C:2");
        assertThat(matches.firstId("e:A:B")).isEqualTo("e:A:B");
    }

    /** A duct may run there and back: each of its spans is its own. */
    @Test
    void aSpanWithItsOwnNameInBothRunsIsNotTakenForAnother() {
        SpanMatches matches = matches(List.of("d:A:B", "d:B:A"), List.of("d:A:B", "d:B:A"));

        assertThat(matches.firstId("d:A:B")).isEqualTo("d:A:B");
        assertThat(matches.firstId("d:B:A")).isEqualTo("d:B:A");
    }

    @Test
    void vaultsWhoseNamesNeedEscapesAreMatchedToo() {
        SpanMatches matches = matches(List.of("d%3A1:A%25:B"), List.of("d%3A1:B:A%25"));

        assertThat(matches.firstId("d%3A1:B:A%25")).isEqualTo("d%3A1:A%25:B");
    }

    @Test
    void otherDuctsVaultsAndNumbersAreOtherSpans() {
        SpanMatches matches = matches(List.of("d:A:B"), List.of("e:B:A", "d:B:C", "d:B:A:2", "d:B:A"));

        assertThat(matches.firstId("e:B:A")).isEqualTo("e:B:A");
        assertThat(matches.firstId("d:B:C")).isEqualTo("d:B:C");
        assertThat(matches.firstId("d:B:A:2")).isEqualTo("d:B:A:2");
        assertThat(matches.firstId("d:B:A")).isEqualTo("d:A:B");
    }

    /** A duct between two vaults twice, each of its lines drawn either way in the second run, in any order of the lines. */
    @ParameterizedTest
    @CsvSource({
        "d:A:B 100, d:B:A 250, d:A:B d:A:B:2",
        "d:B:A 100, d:A:B 250, d:A:B d:A:B:2",
        "d:B:A 100, d:B:A:2 250, d:A:B d:A:B:2",
        "d:B:A:2 100, d:B:A 250, d:A:B d:A:B:2",
        "d:A:B:2 100, d:B:A 250, d:A:B d:A:B:2",
        "d:B:A 101, d:A:B 249, d:A:B d:A:B:2"
    })
    void parallelSpansAreToldApartByTheirLengths(String one, String two, String firstIds) {
        SpanMatches matches =
                SpanMatches.of(List.of(named("d:A:B 100"), named("d:A:B:2 250")), List.of(named(one), named(two)));

        assertThat(matches.firstId(named(one).id()) + " "
                        + matches.firstId(named(two).id()))
                .isEqualTo(firstIds);
    }

    /** Of lines that are equally long, or of unknown length, names decide; each span of the first run is given once. */
    @ParameterizedTest
    @ValueSource(strings = {"100", "NaN"})
    void parallelSpansOfOneLengthAreEachGivenOnce(String lengthM) {
        List<String> first = List.of("d:A:B", "d:B:A", "d:A:B:2");
        for (List<String> second : List.of(
                List.of("d:B:A", "d:A:B", "d:B:A:2"),
                List.of("d:A:B", "d:A:B:2", "d:A:B:3"),
                List.of("d:B:A:3", "d:B:A:2", "d:B:A"))) {
            SpanMatches matches = SpanMatches.of(
                    first.stream().map(id -> named(id + " " + lengthM)).toList(),
                    second.stream().map(id -> named(id + " " + lengthM)).toList());

            assertThat(second.stream().map(matches::firstId)).containsExactlyInAnyOrderElementsOf(first);
            assertThat(second.stream().filter(first::contains))
                    .allSatisfy(id -> assertThat(matches.firstId(id)).isEqualTo(id));
        }
    }

    private static SpanMatches.Named named(String idAndLength) {
        String[] parts = idAndLength.split(" ", -1);
        return new SpanMatches.Named(parts[0], Double.parseDouble(parts[1]));
    }

    private static SpanMatches matches(List<String> first, List<String> second) {
        return SpanMatches.of(
                first.stream().map(id -> named(id + " 50")).toList(),
                second.stream().map(id -> named(id + " 50")).toList());
    }
}
