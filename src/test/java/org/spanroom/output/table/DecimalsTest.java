package org.spanroom.output.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class DecimalsTest {
    /** Worked by hand; halves go away from zero. */
    @ParameterizedTest(name = "{0} with {1} decimals is {2}")
    @CsvSource({
        "0, 2, 0.00",
        "-0.0, 2, 0.00",
        "-0.001, 2, 0.00",
        "1.5, 0, 2",
        "-1.5, 0, -2",
        "0.125, 2, 0.13",
        "-0.125, 2, -0.13",
        "0.05, 1, 0.1",
        "123456.7894, 3, 123456.789",
        "-179.9999999999, 9, -180.000000000",
        "9.995, 1, 10.0",
        "1e20, 3, 1.0E20",
        "-1.5e300, 1, -1.5E300"
    })
    void numbersAreWrittenWithFixedDecimals(double value, int decimals, String expected) {
        assertThat(fixed(value, decimals)).isEqualTo(expected);
    }

    @ParameterizedTest(name = "{0} is {1} in short")
    @CsvSource({"1.5, 1.5", "-30, -30", "0, 0", "0.100000000, 0.1", "100, 100", "1e20, 1.0E20", "-0.0000000001, 0"})
    void coordinatesGoWithoutZerosAtTheEnd(double value, String expected) {
        byte[] bytes = new byte[Decimals.MOST_BYTES];

        int end = Decimals.formatShort(value, 9, bytes, 0);

        assertThat(ascii(bytes, end)).isEqualTo(expected);
    }

    @ParameterizedTest
    @ValueSource(longs = {0, 7, 10, -10, 99, 100, Long.MAX_VALUE, Long.MIN_VALUE, -1234567890123L})
    void wholeNumbersAreWrittenAsJavaDoes(long value) {
        byte[] bytes = new byte[Decimals.MOST_BYTES];

        int end = Decimals.format(value, bytes, 0);

        assertThat(ascii(bytes, end)).isEqualTo(Long.toString(value));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void textAndRoundedNumberAreTheSameAndNearTheValue(long seed) {
        var random = new Random(seed);
        for (int i = 0; i < 1000; i++) {
            int decimals = random.nextInt(10);
            double value = random.nextGaussian() * Math.pow(10, random.nextInt(6));

            String text = fixed(value, decimals);

            assertThat(Double.parseDouble(text)).isEqualTo(Decimals.round(value, decimals));
            assertThat(Decimals.round(value, decimals)).isCloseTo(value, within(0.5000001 * Math.pow(10, -decimals)));
        }
    }

    static LongStream seeds() {
        return LongStream.range(0, 50);
    }

    private static String fixed(double value, int decimals) {
        byte[] bytes = new byte[Decimals.MOST_BYTES];
        return ascii(bytes, Decimals.format(value, decimals, bytes, 0));
    }

    private static String ascii(byte[] bytes, int end) {
        return new String(bytes, 0, end, StandardCharsets.US_ASCII);
    }
}
