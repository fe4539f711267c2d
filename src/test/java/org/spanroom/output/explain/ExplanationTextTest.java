package org.spanroom.output.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.output.SpanExplanationSample.FT_M;
import static org.spanroom.output.SpanExplanationSample.LBF_N;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.SpanExplanationSample;

class ExplanationTextTest {
    /** Steady forces of the worked example in lbf, derived by hand and by stepping the coupled equations. */
    @ParameterizedTest
    @CsvSource({"lubricated, 58.5, 8.1, 59.6, 8.0", "dry, 125.69, 18.65, 128.83, 17.93", "bad, 210.9, 27.3, 218.1, 25.9"
    })
    void everyFrictionSetIsListedBothWays(String friction, double pullA, double holdB, double pullB, double holdA) {
        String text = SpanExplanationSample.text(SpanExplanationSample.workedExample());

        Matcher row = find(text, "^ +" + friction + " +([0-9.]+) +([0-9.]+) +([0-9.]+) +([0-9.]+)$");

        double[] expected = {pullA, holdB, pullB, holdA};
        for (int i = 0; i < expected.length; i++) {
            assertThat(Double.parseDouble(row.group(i + 1)) / LBF_N).isCloseTo(expected[i], within(0.06));
        }
    }

    /** Boundaries of the example pulled out at B: meters from A in ft, innerduct and cable in lbf. */
    @ParameterizedTest
    @CsvSource({
        "straight, 148.822, 21.44, 14.36",
        "bend, 151.178, 35.77, 11.35",
        "straight, 498.822, 85.86, 3.00",
        "bend, 501.178, 114.60, 2.37",
        "straight, 600, 128.83, 0"
    })
    void everySectionIsListed(String section, double atFt, double innerductLbf, double cableLbf) {
        String text = SpanExplanationSample.text(SpanExplanationSample.workedExample());
        String outAtB = text.substring(text.indexOf("Out at B"));

        String numbers = String.format(Locale.ROOT, "%s(?: +[0-9.]+){3} +%.2f", section, atFt * FT_M);
        Matcher row = find(outAtB, "^ +" + numbers + " +([0-9.]+) +([0-9.]+) .*$");

        assertThat(Double.parseDouble(row.group(1)) / LBF_N).isCloseTo(innerductLbf, within(0.022));
        assertThat(Double.parseDouble(row.group(2)) / LBF_N).isCloseTo(cableLbf, within(0.022));
    }

    /** The first section begins where the cable is held. */
    @Test
    void theHoldForceStandsAtTheAnchor() {
        String text = SpanExplanationSample.text(SpanExplanationSample.workedExample());
        String outAtB = text.substring(text.indexOf("Out at B"));

        Matcher row = find(outAtB, "^ +straight +0\\.00 +0\\.0+ +([0-9.]+) .*$");

        assertThat(Double.parseDouble(row.group(1)) / LBF_N).isCloseTo(17.93, within(0.01));
    }

    /** Of the example out at B: at 0, 150, 300, 450 and 600 ft out. */
    @Test
    void theFallOfBothForcesIsListed() {
        String text = SpanExplanationSample.text(SpanExplanationSample.workedExample());
        String outAtB = text.substring(text.indexOf("Out at B"));

        double[][] expected = {{0, 128.8, 17.9}, {150, 86.1, 12.8}, {300, 53.5, 7.8}, {450, 25.1, 4.2}, {600, 0, 0}};
        for (double[] step : expected) {
            Matcher row = find(outAtB, String.format(Locale.ROOT, "^ +%.2f +([0-9.]+) +([0-9.]+)$", step[0] * FT_M));
            assertThat(Double.parseDouble(row.group(1)) / LBF_N).isCloseTo(step[1], within(0.2));
            assertThat(Double.parseDouble(row.group(2)) / LBF_N).isCloseTo(step[2], within(0.2));
        }
    }

    /** 128.8 of 653 lbf and 17.9 of 180 lbf: 20 and 10 %. */
    @Test
    void limitsAreListedTheMostUsedFirst() {
        String text = SpanExplanationSample.text(SpanExplanationSample.workedExample());
        String outAtB = text.substring(text.indexOf("Out at B"), text.indexOf("Score"));

        List<Double> used = Pattern.compile("(?:maximum|minimum) +([0-9.]+)")
                .matcher(outAtB)
                .results()
                .map(result -> Double.valueOf(result.group(1)))
                .toList();

        assertThat(used).hasSize(8).isSortedAccordingTo(Comparator.reverseOrder());
        assertThat(outAtB)
                .containsPattern("innerduct strength +573\\.\\d+ N +290\\d\\.\\d N +maximum +19\\.7 +ok +182\\.88\n")
                .containsPattern("cable hold +79\\.\\d+ N +801\\.00 N +maximum +10\\.0 +ok +0\\.00\n")
                .containsPattern("innerduct bend radius +0\\.914 m +0\\.457 m +minimum +50\\.0 ")
                .doesNotContain(" fails ");
    }

    @Test
    void whatFailsIsMarked() {
        String text = SpanExplanationSample.text(SpanExplanationSample.failing());

        assertThat(text)
                .contains("Pulling: possible from neither end")
                .containsPattern("above the warning limit +total bends, section length\n")
                .containsPattern("innerduct strength .* maximum +\\d+\\.\\d +fails +[0-9.]+\n")
                .containsPattern("total bends +360\\.00 degrees +360\\.00 degrees +maximum +100\\.0 +ok +[0-9.]+\n");
    }

    @Test
    void placeDuctBendsRoomAndScoreAreTold() {
        String text = SpanExplanationSample.text(SpanExplanationSample.workedExample());

        assertThat(text)
                .startsWith("Span S-7\n  ranking           rank 3 of 12\n")
                .containsPattern("from A +vault V-1, offset from the line 0\\.120 m\n")
                .containsPattern("pieces +R-1, R-2\n")
                .containsPattern("inside diameter +102\\.26 mm \\(assumed\\)\n")
                .containsPattern("condition +sound\n")
                .containsPattern("assumed by the config +inside diameter, cable mass\n")
                .containsPattern("Bends\n  bends +2\n  total +90\\.00 degrees\n")
                .containsPattern("1 +45\\.72 +45\\.36 +45\\.00 +left +0\\.91 +0\\.72\n")
                .containsPattern("2 +152\\.40 +152\\.04 +45\\.00 +right +0\\.91 +yes +0\\.72\n")
                .containsPattern("positions now +1\n")
                .containsPattern("positions after +9\n")
                .containsPattern("of 100 points +70\\.00\n")
                .containsPattern("room_gained +8 positions +0\\.75 +0\\.6 +45\\.00\n")
                .contains("uncertain by a factor of two");
        assertThat(text.replaceAll("\\s+", " "))
                .contains("cable i1-c, outside diameter 12.70 mm, mass 0.1191 kg/m, service live");
    }

    @Test
    void whatNobodyMeasuredIsSaidWithItsValue() {
        String text = SpanExplanationSample.text(SpanExplanationSample.failing());

        assertThat(text)
                .containsPattern("breakaway +1\\.30 times  breakaway force: the steady force times a factor\n")
                .containsPattern("wander +0\\.01031 rad/m  bending that is not drawn")
                .containsPattern("dry +0\\.350 +0\\.300 +0\\.300\n")
                .containsPattern("friction state that decides +dry\n");
    }

    @Test
    void whereNothingIsToPullTheTextSaysWhy() {
        assertThat(SpanExplanationSample.text(SpanExplanationSample.nothingToPull()))
                .contains("Pulling: no innerduct to pull: no rigid innerduct in the duct\n")
                .containsPattern("Bends\n  bends +0\n  total +0\\.00 degrees\n")
                .doesNotContain("Based on", "Settings", "Effort");
    }

    @ParameterizedTest
    @MethodSource("samples")
    void noLineIsWiderThanThePage(SpanExplanation explained) {
        assertThat(SpanExplanationSample.text(explained).lines())
                .allSatisfy(line -> assertThat(line.codePointCount(0, line.length()))
                        .as(line)
                        .isLessThanOrEqualTo(100));
    }

    /** Escape sequences begin with U+001B, or with U+009B alone (ECMA-48, 5th edition, section 5.4). */
    @Test
    void nothingFromTheDataActsOnTheTerminal() {
        String text = SpanExplanationSample.text(SpanExplanationSample.hostile());

        assertThat(text.codePoints().filter(point -> point != '\n'))
                .allSatisfy(point -> assertThat(Character.getType(point))
                        .isNotIn((int) Character.CONTROL, (int) Character.FORMAT, (int) Character.SURROGATE));
        assertThat(text).contains("alert('x')").doesNotContain("\r");
    }

    static Stream<SpanExplanation> samples() {
        return Stream.concat(
                Stream.of(
                        SpanExplanationSample.workedExample(),
                        SpanExplanationSample.recordedAtA(),
                        SpanExplanationSample.failing(),
                        SpanExplanationSample.hostile(),
                        SpanExplanationSample.nothingToPull()),
                Stream.of(1L, 2L, 3L).map(seed -> SpanExplanationSample.random(seed, 40)));
    }

    private static Matcher find(String text, String pattern) {
        Matcher matcher = Pattern.compile(pattern, Pattern.MULTILINE).matcher(text);
        assertThat(matcher.find()).as("a line like %s in\n%s", pattern, text).isTrue();
        return matcher;
    }
}
