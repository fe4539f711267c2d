package org.spanroom.model.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Names of sections: one for each section, whatever characters ids are made of, and the same whichever way a span is drawn. */
class SectionKeyTest {
    private static final List<String> PIECES = List.of("", "A", "B", ":", "::", "%", "%3A", "%25", "-", " ", "é");

    @Test
    void differentSectionsHaveDifferentNames() {
        Map<String, SectionKey> keys = new HashMap<>();
        var random = new Random(7);
        for (int i = 0; i < 200_000; i++) {
            var key = SectionKey.of(text(random), text(random) + "d", "v" + text(random), "v" + text(random));

            SectionKey other = keys.putIfAbsent(key.id(), key);

            assertThat(other == null || other.equals(key))
                    .as(key + " and " + other)
                    .isTrue();
        }
        assertThat(keys).hasSizeGreaterThan(50_000);
    }

    private static String text(Random random) {
        return PIECES.get(random.nextInt(PIECES.size())) + PIECES.get(random.nextInt(PIECES.size()));
    }

    @Test
    void theWayOfDrawingDoesNotMatter() {
        assertThat(SectionKey.of("B1", "d1", "V2", "V10"))
                .isEqualTo(SectionKey.of("B1", "d2", "V10", "V2"))
                .extracting(SectionKey::id)
                .isEqualTo("B1:V10:V2");
    }

    @Test
    void eachOfBankAndVaultsMakesAnotherSection() {
        var key = SectionKey.of("B1", "d", "V1", "V2");

        assertThat(List.of(
                        SectionKey.of("B2", "d", "V1", "V2"),
                        SectionKey.of("B1", "d", "V1", "V3"),
                        SectionKey.of("B1", "d", "V3", "V2"),
                        SectionKey.of("b1", "d", "V1", "V2"),
                        SectionKey.of("B1", "d", "V1", "V1")))
                .doesNotContain(key)
                .doesNotHaveDuplicates();
    }

    @Test
    void withoutABankTheDuctIsOne() {
        for (String bank : List.of("", " ", "\t")) {
            var key = SectionKey.of(bank, "D7", "V2", "V1");

            assertThat(key.hasBank()).isFalse();
            assertThat(key.id()).isEqualTo(":D7:V1:V2");
            assertThat(key).isNotEqualTo(SectionKey.of("D7", "D7", "V1", "V2"));
            assertThat(key).isNotEqualTo(SectionKey.of(bank, "D8", "V1", "V2"));
        }
    }

    @Test
    void namesAreInTheOrderOfTexts() {
        var ten = SectionKey.of("B10", "d", "V1", "V2");
        var one = SectionKey.of("B1", "d", "V1", "V2");

        assertThat(Integer.signum(ten.compareTo(one)))
                .isEqualTo(Integer.signum(ten.id().compareTo(one.id())));
    }
}
