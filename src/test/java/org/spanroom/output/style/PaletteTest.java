package org.spanroom.output.style;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.output.style.ColorMath.Lab;
import org.spanroom.output.style.ColorMath.Vision;

class PaletteTest {
    private static final double LEAST_DIFFERENCE = 10;
    private static final double LEAST_STEP = 8;

    /** Pairs that Sharma, Wu, Dalal (2005) published with their differences, for the corners of the formula; from memory. */
    @ParameterizedTest
    @CsvSource({
        "50, 2.6772, -79.7751, 50, 0, -82.7485, 2.0425",
        "50, 3.1571, -77.2803, 50, 0, -82.7485, 2.8615",
        "50, 2.8361, -74.0200, 50, 0, -82.7485, 3.4412",
        "50, -1.3802, -84.2814, 50, 0, -82.7485, 1.0000",
        "50, 0, 0, 50, -1, 2, 2.3669",
        "50, 2.4900, -0.0010, 50, -2.4900, 0.0009, 7.1792",
        "50, 2.4900, -0.0010, 50, -2.4900, 0.0011, 7.2195",
        "50, 2.5, 0, 50, 0, -2.5, 4.3065",
        "50, 2.5, 0, 73, 25, -18, 27.1492",
        "50, 2.5, 0, 61, -5, 29, 22.8977",
        "50, 2.5, 0, 56, -27, -3, 31.9030",
        "50, 2.5, 0, 58, 24, 15, 19.4535",
        "60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644",
        "2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082"
    })
    void differencesAreThePublishedOnes(
            double l1, double a1, double b1, double l2, double a2, double b2, double published) {
        var one = new Lab(l1, a1, b1);
        var other = new Lab(l2, a2, b2);

        assertEquals(published, ColorMath.difference(one, other), 5e-5);
        assertEquals(published, ColorMath.difference(other, one), 5e-5);
    }

    /** Black, white and mid-gray of sRGB are on the gray axis: L* 0, 100 and 53.585 (IEC 61966-2-1, from memory). */
    @Test
    void graysAreGrayInEveryVision() {
        for (Vision vision : Vision.values()) {
            assertEquals(0, ColorMath.seen("#000000", vision).light(), 1e-6);
            assertEquals(100, ColorMath.seen("#ffffff", vision).light(), 1e-3);
            assertEquals(53.585, ColorMath.seen("#808080", vision).light(), 1e-3);
            assertEquals(0, ColorMath.seen("#808080", vision).a(), 1e-2);
        }
    }

    static Stream<Arguments> legends() {
        return Palette.legends().entrySet().stream()
                .flatMap(legend -> Stream.of(Background.values())
                        .map(page -> Arguments.of(legend.getKey(), page, legend.getValue())));
    }

    @ParameterizedTest(name = "{0} on {1}")
    @MethodSource("legends")
    void everyTwoClassesDifferInEveryVision(String name, Background page, List<PaletteClass> classes) {
        assertAll(Stream.of(Vision.values())
                .flatMap(vision -> IntStream.range(0, classes.size())
                        .boxed()
                        .flatMap(i -> IntStream.range(0, i)
                                .mapToObj(j -> () -> assertDiffer(classes.get(i), classes.get(j), page, vision)))));
    }

    private static void assertDiffer(PaletteClass one, PaletteClass other, Background page, Vision vision) {
        double difference =
                ColorMath.difference(ColorMath.seen(one.hex(page), vision), ColorMath.seen(other.hex(page), vision));
        assertTrue(
                difference >= LEAST_DIFFERENCE,
                one.key() + " and " + other.key() + " differ by " + difference + " in " + vision);
    }

    @ParameterizedTest(name = "{0} on {1}")
    @MethodSource("legends")
    void lightnessKeepsTheOrder(String name, Background page, List<PaletteClass> classes) {
        double sign = page == Background.LIGHT ? 1 : -1;
        for (int i = 1; i < classes.size(); i++) {
            double before =
                    ColorMath.seen(classes.get(i - 1).hex(page), Vision.NORMAL).light();
            double after =
                    ColorMath.seen(classes.get(i).hex(page), Vision.NORMAL).light();
            assertTrue(sign * (after - before) >= LEAST_STEP, classes.get(i).key() + ": " + before + " then " + after);
        }
    }

    @ParameterizedTest(name = "{0} on {1}")
    @MethodSource("legends")
    void keysAreUnique(String name, Background page, List<PaletteClass> classes) {
        assertEquals(
                classes.size(),
                classes.stream().map(PaletteClass::key).distinct().count());
        classes.forEach(one -> assertTrue(one.hex(page).matches("#[0-9a-f]{6}"), one.hex(page)));
    }

    @ParameterizedTest
    @CsvSource({"1, top_10", "10, top_10", "11, top_50", "50, top_50", "51, top_200", "1000, top_1000", "1001, ranked"})
    void aRankHasItsClass(int rank, String key) {
        assertEquals(key, Palette.rankClass(OptionalInt.of(rank)).key());
    }

    @Test
    void aSpanWithoutARankIsExcluded() {
        assertEquals("excluded", Palette.rankClass(OptionalInt.empty()).key());
    }

    /** Five ranks in a row of limits that a legend names. */
    @Test
    void labelsNameTheLimits() {
        List<Integer> limits = Palette.rankLimits();
        for (int i = 0; i < limits.size(); i++) {
            assertTrue(Palette.rankClasses().get(i).label().endsWith(" to " + limits.get(i)));
        }
    }
}
