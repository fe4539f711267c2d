package org.spanroom.model.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpanNameTest {
    private static final String LETTERS = "A:%25 3-~é;/#";

    @Test
    void everyNameSplitsIntoItsPartsAgain() {
        var chance = new Random(15);
        Set<SpanName> parts = new HashSet<>();
        Set<String> names = new HashSet<>();
        for (int i = 0; i < 20_000; i++) {
            var name = new SpanName(word(chance), word(chance), word(chance), 1 + chance.nextInt(3));

            assertThat(SpanName.parse(name.toString())).contains(name);
            parts.add(name);
            names.add(name.toString());
        }
        assertThat(names).hasSameSizeAs(parts).hasSizeGreaterThan(15_000);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "a:b", "a:b:c:d", "a:b:c:0", "a:b:c:2:2", "a:b:c:-1", "a:b:c:12345678901"})
    void aTextThatIsNoNameIsNotSplit(String text) {
        assertThat(SpanName.parse(text)).isEmpty();
    }

    private static String word(Random chance) {
        int length = 1 + chance.nextInt(5);
        var word = new StringBuilder();
        for (int i = 0; i < length; i++) {
            word.append(LETTERS.charAt(chance.nextInt(LETTERS.length())));
        }
        return word.toString();
    }
}
