package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.output.ReckoningSample.FT_M;
import static org.spanroom.output.ReckoningSample.LBF_N;

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
import org.spanroom.model.Reckoning;

class ReckoningTextTest {
    /** Steady forces of the worked example in lbf, derived by hand and by stepping the coupled equations. */
    @ParameterizedTest
    @CsvSource({"lubricated, 58.5, 8.1, 59.6, 8.0", "dry, 125.69, 18.65, 128.83, 17.93", "bad, 210.9, 27.3, 218.1, 25.9"
    })
    void everyFrictionSetIsListedBothWays(String friction, double pullA, double holdB, double pullB, double holdA) {
        String text = ReckoningText.write(ReckoningSample.workedExample());

        Matcher row = find(text, "^    " + friction + " +([0-9.]+) / ([0-9.]+) +([0-9.]+) / ([0-9.]+)$");

        double[] expected = {pullA, holdB, pullB, holdA};
        for (int i = 0; i < expected.length; i++) {
            assertThat(Double.parseDouble(row.group(i + 1)) / LBF_N).isCloseTo(expected[i], within(0.06));
        }
    }

    /** Boundaries of the example pulled out at B: metres from A in ft, innerduct and cable in lbf. */
    @ParameterizedTest
    @CsvSource({
        "anchor, 0, 0, 17.93",
        "straight, 148.822, 21.44, 14.36",
        "bend, 151.178, 35.77, 11.35",
        "straight, 498.822, 85.86, 3.00",
        "bend, 501.178, 114.60, 2.37",
        "straight, 600, 128.83, 0"
    })
    void everySectionIsListed(String section, double atFt, double innerductLbf, double cableLbf) {
        String text = ReckoningText.write(ReckoningSample.workedExample());
        String outAtB = text.substring(text.indexOf("Out at B"));

        Matcher row =
                find(outAtB, String.format(Locale.ROOT, "^ +%.2f  %s .* ([0-9.]+) +([0-9.]+)$", atFt * FT_M, section));

        assertThat(Double.parseDouble(row.group(1)) / LBF_N).isCloseTo(innerductLbf, within(0.022));
        assertThat(Double.parseDouble(row.group(2)) / LBF_N).isCloseTo(cableLbf, within(0.022));
    }

    /** Of the example out at B: at 0, 150, 300, 450 and 600 ft out. */
    @Test
    void theFallOfBothForcesIsListed() {
        String text = ReckoningText.write(ReckoningSample.workedExample());
        String outAtB = text.substring(text.indexOf("Out at B"));

        isRow(find(outAtB, "^ +m out +(.*)$"), FT_M, 0, 150, 300, 450, 600);
        isRow(find(outAtB, "^ +pull N +(.*)$"), LBF_N, 128.8, 86.1, 53.5, 25.1, 0);
        isRow(find(outAtB, "^ +hold N +(.*)$"), LBF_N, 17.9, 12.8, 7.8, 4.2, 0);
    }

    /** 128.8 of 653 lbf and 17.9 of 180 lbf: 20 and 10 %. */
    @Test
    void limitsAreListedTheMostUsedFirst() {
        String text = ReckoningText.write(ReckoningSample.workedExample());
        String outAtB = text.substring(text.indexOf("Out at B"), text.indexOf("Score"));

        List<Integer> used = Pattern.compile("^ +(\\d+) %  ", Pattern.MULTILINE)
                .matcher(outAtB)
                .results()
                .map(result -> Integer.valueOf(result.group(1)))
                .toList();

        assertThat(used).hasSize(10).isSortedAccordingTo(Comparator.reverseOrder());
        assertThat(outAtB)
                .containsPattern("20 %  innerduct strength +573\\.. <= +290\\d\\.. N +182.88\n")
                .containsPattern("10 %  cable hold +79\\.8 <= +801\\.0 N +0\\.00\n")
                .containsPattern("61 %  vault exit radius +0.75 >= +0.46 m ")
                .doesNotContain("FAILS");
    }

    @Test
    void whatFailsIsMarked() {
        String text = ReckoningText.write(ReckoningSample.failing());

        assertThat(text)
                .contains("Pulling: possible from neither end")
                .contains("warns   total bends, section length")
                .containsPattern("\\d+ %  innerduct strength .* FAILS\n")
                .containsPattern("100 %  total bends +360\\.0 <= +360\\.0 degrees +[0-9.]+\n");
    }

    @Test
    void placeDuctBendsRoomAndScoreAreTold() {
        assertThat(ReckoningText.write(ReckoningSample.workedExample()))
                .startsWith("Span S-7\n")
                .contains("vault V-1 (A), 0.12 m beside the line", "pieces  R-1, R-2")
                .contains("102.3 mm round, pvc40, condition sound", "cable i1-c, 12.7 mm, 0.119 kg/m, live")
                .contains("assumed inside diameter, cable mass")
                .contains("Bends: 2, 90.0 degrees in all")
                .containsPattern("1 +45\\.72 +45\\.0  left +0\\.91  measured +0\\.72\n")
                .containsPattern("2 +152\\.40 +45\\.0  right +0\\.91  assumed +0\\.72\n")
                .contains("places for a cable: 1 now, 9 after, in 3 sleeves")
                .contains("Score 70.0 of 100, rank 3 of 12")
                .containsPattern("room_gained +8\\.0 cables +0\\.75 +0\\.60 +45\\.0\n")
                .contains("uncertain by a factor of two");
    }

    @Test
    void whatNobodyMeasuredIsSaidWithItsValue() {
        String text = ReckoningText.write(ReckoningSample.failing());

        assertThat(text)
                .contains("breakaway          the first pull is the steady one times a factor: 1.30\n")
                .contains("published for bored pipe: 0.01031 rad/m\n")
                .containsPattern("dry +0\\.35 +0\\.30 +0\\.30  judged by\n");
    }

    @Test
    void whereNothingIsToPullTheTextSaysWhy() {
        assertThat(ReckoningText.write(ReckoningSample.nothingToPull()))
                .contains("Pulling: nothing to pull: no rigid innerduct lies in the duct\n")
                .contains("Bends: 0, 0.0 degrees in all\n")
                .doesNotContain("FAILS", "It rests on");
    }

    @ParameterizedTest
    @MethodSource("samples")
    void noLineIsWiderThanThePage(Reckoning reckoning) {
        assertThat(ReckoningText.write(reckoning).lines())
                .allSatisfy(line -> assertThat(line.codePointCount(0, line.length()))
                        .as(line)
                        .isLessThanOrEqualTo(100));
    }

    /** Escape sequences begin with U+001B, or with U+009B alone (ECMA-48, 5th edition, section 5.4). */
    @Test
    void nothingFromTheDataActsOnTheTerminal() {
        String text = ReckoningText.write(ReckoningSample.hostile());

        assertThat(text.codePoints().filter(point -> point != '\n'))
                .allSatisfy(point -> assertThat(Character.getType(point))
                        .isNotIn((int) Character.CONTROL, (int) Character.FORMAT, (int) Character.SURROGATE));
        assertThat(text).contains("alert('x')").doesNotContain("\r");
    }

    static Stream<Reckoning> samples() {
        return Stream.concat(
                Stream.of(
                        ReckoningSample.workedExample(),
                        ReckoningSample.failing(),
                        ReckoningSample.hostile(),
                        ReckoningSample.nothingToPull()),
                Stream.of(1L, 2L, 3L).map(seed -> ReckoningSample.random(seed, 40)));
    }

    private static void isRow(Matcher row, double unit, double... expected) {
        String[] cells = row.group(1).split(" +", -1);
        assertThat(cells).hasSize(expected.length);
        for (int i = 0; i < expected.length; i++) {
            assertThat(Double.parseDouble(cells[i]) / unit).isCloseTo(expected[i], within(0.2));
        }
    }

    private static Matcher find(String text, String pattern) {
        Matcher matcher = Pattern.compile(pattern, Pattern.MULTILINE).matcher(text);
        assertThat(matcher.find()).as("a line like %s in\n%s", pattern, text).isTrue();
        return matcher;
    }
}
