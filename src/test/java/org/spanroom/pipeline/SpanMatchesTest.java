package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class SpanMatchesTest {
    @Test
    void aSpanWhoseLineIsTurnedAroundIsTheSameSpan() {
        SpanMatches matches =
                SpanMatches.of(List.of("d:A:B", "d:B:C:2", "e:A:B"), List.of("d:B:A", "d:C:B:2", "e:A:B"));

        assertThat(matches.firstId("d:B:A")).isEqualTo("d:A:B");
        assertThat(matches.firstId("d:C:B:2")).isEqualTo("d:B:C:2");
        assertThat(matches.firstId("e:A:B")).isEqualTo("e:A:B");
    }

    /** A duct may run there and back: each of its spans is its own. */
    @Test
    void aSpanWithItsOwnNameInBothRunsIsNotTakenForAnother() {
        SpanMatches matches = SpanMatches.of(List.of("d:A:B", "d:B:A"), List.of("d:A:B", "d:B:A"));

        assertThat(matches.firstId("d:A:B")).isEqualTo("d:A:B");
        assertThat(matches.firstId("d:B:A")).isEqualTo("d:B:A");
    }

    @Test
    void vaultsWhoseNamesNeedEscapesAreMatchedToo() {
        SpanMatches matches = SpanMatches.of(List.of("d%3A1:A%25:B"), List.of("d%3A1:B:A%25"));

        assertThat(matches.firstId("d%3A1:B:A%25")).isEqualTo("d%3A1:A%25:B");
    }

    @Test
    void otherDuctsVaultsAndNumbersAreOtherSpans() {
        SpanMatches matches = SpanMatches.of(List.of("d:A:B"), List.of("e:B:A", "d:B:C", "d:B:A:2", "d:B:A"));

        assertThat(matches.firstId("e:B:A")).isEqualTo("e:B:A");
        assertThat(matches.firstId("d:B:C")).isEqualTo("d:B:C");
        assertThat(matches.firstId("d:B:A:2")).isEqualTo("d:B:A:2");
        assertThat(matches.firstId("d:B:A")).isEqualTo("d:A:B");
    }
}
