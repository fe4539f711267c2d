package org.spanroom.output.table;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextTest {
    @ParameterizedTest
    @ValueSource(
            strings = {"", "plain", "line\nbreak\r\ttab", "Größe № 東 \uD83D\uDEA7", "]]> & <b> \" ' \\", "\uE000\uFFFD"
            })
    void harmlessTextStaysTheSameObject(String text) {
        assertThat(Text.clean(text)).isEqualTo(text);
    }

    @Test
    void whatSomeFormatCannotHoldIsReplaced() {
        assertThat(Text.clean("a\u0000b\u0007c\u007Fd\u0085e")).isEqualTo("a\uFFFDb\uFFFDc\uFFFDd\uFFFDe");
        assertThat(Text.clean("half \uD83D")).isEqualTo("half \uFFFD");
        assertThat(Text.clean("\uDEA7 half")).isEqualTo("\uFFFD half");
        assertThat(Text.clean("\uFFFE\uFFFF\uDBFF\uDFFF")).isEqualTo("\uFFFD\uFFFD\uFFFD");
        assertThat(Text.clean("\u0001\uD83D\uDEA7")).isEqualTo("\uFFFD\uD83D\uDEA7");
    }
}
