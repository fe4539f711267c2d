package org.spanroom.model.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against the order of {@link String#compareTo}. */
class LeadingTextTest {
    private static final String CHARACTERS = "\0 !09:AZaz~\u007f\u0080\u00e9\u4e00\ud83d\ude00";

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aTextThatComesLaterNeverHasASmallerNumber(long seed) {
        var random = new Random(seed);
        String one = text(random);
        String other = random.nextBoolean() ? text(random) : one + text(random);

        int order = one.compareTo(other);
        long difference = Long.compare(LeadingText.of(one), LeadingText.of(other));

        assertThat(LeadingText.of(one)).isNotNegative();
        assertThat(order < 0 ? difference : -difference)
                .as("%s and %s", one, other)
                .isLessThanOrEqualTo(0);
    }

    @Test
    void nineCharactersCount() {
        assertThat(List.of("D1", "D12", "D12345678", "D12345679", "E"))
                .extracting(LeadingText::of)
                .isSorted()
                .doesNotHaveDuplicates();
        assertThat(LeadingText.of("D123456781")).isEqualTo(LeadingText.of("D123456789"));
    }

    private static String text(Random random) {
        var text = new StringBuilder();
        for (int length = random.nextInt(14); text.length() < length; ) {
            text.append(CHARACTERS.charAt(random.nextInt(CHARACTERS.length())));
        }
        return text.toString();
    }

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }
}
