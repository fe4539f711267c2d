package org.spanroom.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpreadsheetTextTest {
    /** Where a cell begins for any spreadsheet: characters that are not visible, then a sign. The tested code is a loop, this is a pattern. */
    private static final Pattern FORMULA = Pattern.compile(
            "(?:^|[;\\t\\n\\r])(?![\"\\p{Z}\\p{Cf}\\p{Cc}&&[^;\\t\\n\\r]]*[+-]?\\d+(\\.\\d+)?(?:$|[;\\t\\n\\r]))"
                    + "[\"\\p{Z}\\p{Cf}\\p{Cc}&&[^;\\t\\n\\r]]*[=+@\\-\uFF1D\uFF0B\uFF0D\uFF20\uFE66\uFE62\uFE63\uFE6B]");

    private static final String LETTERS =
            "=+-@;'\"\t\n\r ,5.x\u00A0\u2003\u3000\u200B\uFEFF\u202E\u0000\uFF1D\uFF0B\uFF0D\uFF20\uFE63";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "=1",
                "+x",
                "-x",
                "@x",
                "\tx",
                "\rx",
                "\nx",
                " =1",
                "\u00A0=1",
                "\u2003+x",
                "\u3000-x",
                "\u200B=1",
                "\uFEFF=1",
                "\u202E@x",
                "\uFF1D1",
                "\uFF0Bx",
                "\uFF0Dx",
                "\uFF20x",
                "\uFE66x",
                "\"=1",
                "'=1",
                "''=1",
                "-1e5",
                "+1-2",
                "-5 -x"
            })
    void beginningOfAFormulaIsGuarded(String text) {
        assertThat(SpreadsheetText.guarded(text)).isEqualTo("'" + text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"a;=1", "a;+x", "a; -x", "a;\u00A0@x", "a\t=1", "a\n=1", "a;'=1", ";=1", ";;=1", "5;\uFF1D1"})
    void aCellThatBeginsBehindASemicolonIsGuardedThere(String text) {
        assertThat(SpreadsheetText.guarded(text)).isEqualTo(text.replaceFirst("(?<=[;\\t\\n])(?=[^;])", "'"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "a",
                "-5",
                "+7",
                "-12.5",
                "a;-5",
                "-5;-7.25",
                "a=1",
                "a - b",
                "B19-2:V1:V2",
                "x@y",
                "'x",
                "''",
                ";",
                "\u00E9-x"
            })
    void allElseStaysAsItIs(String text) {
        assertThat(SpreadsheetText.guarded(text)).isEqualTo(text);
    }

    @Test
    void everyTextComesBackAndNoneIsLeftThatAnySpreadsheetWouldRun() {
        var random = new Random(20260);
        for (int i = 0; i < 300_000; i++) {
            String text = random.ints(random.nextInt(9), 0, LETTERS.length())
                    .mapToObj(at -> LETTERS.substring(at, at + 1))
                    .reduce("", String::concat);
            String written = SpreadsheetText.guarded(text);

            assertThat(SpreadsheetText.restored(written)).isEqualTo(text);
            assertThat(FORMULA.matcher(written).find())
                    .as("%s", List.of(text, written))
                    .isFalse();
            byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
            if (!written.equals(text)) {
                assertThat(SpreadsheetText.mayBeFormula(bytes, 0, bytes.length))
                        .as(text)
                        .isTrue();
            }
        }
    }
}
