package org.spanroom.input.layer;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.model.Unit;

class SourceNumberTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "4 | 4 | ",
                "4.0 | 4 | ",
                "-2.5e1 | -25 | ",
                ".5 | 0.5 | ",
                "4,5 | 4.5 | ",
                "1-1/4 | 1.25 | ",
                "3 1/2 | 3.5 | ",
                "3/4 | 0.75 | ",
                "1-1/4 in | 1.25 | IN",
                "4\" | 4 | IN",
                "100 mm | 100 | MM",
                "100mm | 100 | MM",
                "12' | 12 | FT",
                "30 ft. | 30 | FT",
                "170 lb/1000ft | 170 | LB_PER_1000_FT"
            })
    void readsWhatPeopleWrite(String text, double expected, Unit unit) {
        assertThat(SourceNumber.parse(text)).contains(new SourceNumber(expected, Optional.ofNullable(unit)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "four", "1,234", "12 apples", "4x4", "NaN", "1e999", "1/0", "--", "2024-05-01"})
    void refusesWhatIsNoNumberOrCouldBeTwo(String text) {
        assertThat(SourceNumber.parse(text)).isEmpty();
    }

    /** The same value as three formats give it. */
    @ParameterizedTest
    @CsvSource({
        "4, 4",
        "4.0, 4",
        "4.000, 4",
        "0.1, 0.1",
        "1e21, 1000000000000000000000",
        "-0.0, 0",
        "1234567.5, 1234567.5"
    })
    void numbersHaveOneText(double number, String expected) {
        assertThat(SourceNumber.text(number)).isEqualTo(expected);
    }
}
