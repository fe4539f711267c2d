package org.spanroom.output.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.SpanExplanationSample;

class ExplanationUnitsTest {
    /** A metric unit as a word of its own, or within "m from A". */
    private static final Pattern METRIC =
            Pattern.compile("(?<![\\w-])(mm2|mm|m3|m|km|N/m|N|kg/m3|kg/m|kg|MPa|rad/m|l|meters?)(?![\\w/])");

    /** How much of the unit one US unit is, and that US unit (NIST SP 811, Appendix B). */
    private static final Map<String, Map.Entry<String, Double>> US = Map.ofEntries(
            Map.entry("m", Map.entry("ft", 0.3048)),
            Map.entry("m from A", Map.entry("ft from A", 0.3048)),
            Map.entry("mm", Map.entry("in", 25.4)),
            Map.entry("mm2", Map.entry("in2", 645.16)),
            Map.entry("N", Map.entry("lbf", 4.4482216152605)),
            Map.entry("N/m", Map.entry("lbf/ft", 14.593902937206364)),
            Map.entry("kg", Map.entry("lb", 0.45359237)),
            Map.entry("kg/m", Map.entry("lb/ft", 0.45359237 / 0.3048)),
            Map.entry("kg/m3", Map.entry("lb/ft3", 16.01846337396014)),
            Map.entry("MPa", Map.entry("psi", 0.006894757293168361)),
            Map.entry("rad/m", Map.entry("rad/ft", 1 / 0.3048)),
            Map.entry("m3", Map.entry("ft3", 0.028316846592)),
            Map.entry("l", Map.entry("gal", 3.785411784)));

    static Stream<SpanExplanation> samples() {
        return Stream.concat(
                Stream.of(
                        SpanExplanationSample.workedExample(),
                        SpanExplanationSample.recordedAtA(),
                        SpanExplanationSample.failing(),
                        SpanExplanationSample.nothingToPull()),
                LongStream.rangeClosed(1, 6).mapToObj(seed -> SpanExplanationSample.random(seed, (int) (4 * seed))));
    }

    @ParameterizedTest
    @MethodSource("samples")
    void noMetricUnitIsLeftInTheText(SpanExplanation explained) {
        String us = ExplanationText.write(Explanation.of(explained, UnitSystem.US));

        assertThat(us.lines().filter(line -> METRIC.matcher(line).find())).isEmpty();
        assertThat(us).contains(" ft", " in");
        assertThat(us.contains(" lbf")).isEqualTo(!explained.traces().isEmpty());
    }

    /** The letter N stands at the arrow to the north. */
    @ParameterizedTest
    @MethodSource("samples")
    void noMetricUnitIsLeftOnTheSheet(SpanExplanation explained) {
        List<String> words = words(SpanSheetSvg.draw(explained, UnitSystem.US));

        assertThat(words.stream()
                        .filter(text -> !text.equals("N"))
                        .filter(text -> METRIC.matcher(text).find()))
                .isEmpty();
        assertThat(words).anyMatch(text -> text.contains(" ft"));
    }

    /** Number by number the two trees say the same, in the units of either. */
    @ParameterizedTest
    @MethodSource("samples")
    void everyNumberIsTheMetricOneConverted(SpanExplanation explained) {
        List<ExplanationValue.Figure> metric = figures(Explanation.of(explained));
        List<ExplanationValue.Figure> us = figures(Explanation.of(explained, UnitSystem.US));

        assertThat(us).hasSameSizeAs(metric);
        for (int i = 0; i < us.size(); i++) {
            String unit = metric.get(i).unit();
            if (US.containsKey(unit)) {
                double exact = metric.get(i).value() / US.get(unit).getValue();
                assertThat(us.get(i).unit()).isEqualTo(US.get(unit).getKey());
                assertThat(us.get(i).value()).isCloseTo(exact, within(1e-9 * Math.abs(exact)));
                assertThat(us.get(i).isExact()).isEqualTo(metric.get(i).isExact());
            } else {
                assertThat(us.get(i)).isEqualTo(metric.get(i));
            }
        }
    }

    /** What programs read does not depend on what people are shown. */
    @ParameterizedTest
    @MethodSource("samples")
    void theTreeOfProgramsIsMetric(SpanExplanation explained) {
        assertThat(Explanation.of(explained, UnitSystem.METRIC)).isEqualTo(Explanation.of(explained));
        assertThat(Explanation.of(explained).number("length_m"))
                .isEqualTo(explained.span().lengthM());
    }

    /** 600 ft, bends of 36 in radius 150 and 500 ft from A, forces of 128.83 and 17.93 lbf: the worked example as it was set. */
    @Test
    void theWorkedExampleReadsAsItWasSet() {
        SpanExplanation example = SpanExplanationSample.workedExample();
        String text =
                ExplanationText.write(Explanation.of(example, UnitSystem.US)).replaceAll("\\s+", " ");
        List<String> sheet = words(SpanSheetSvg.draw(example, UnitSystem.US));

        assertThat(text)
                .contains("length 600.00 ft", "outside diameter 1.660 in, wall 0.123 in", "mass 0.08 lb/ft")
                .contains("3.00 ft >= limit 1.50 ft (50 %) at 500.0 ft")
                .contains("128.83", "17.93", "150.00", "500.00");
        assertThat(sheet)
                .contains("Tension of the innerduct, lbf", "Tension of its cable, lbf", "feet from A")
                .contains("Bends, feet from A", "45\u00B0 left, radius 3.00 ft", "150.0", "500.0", "100")
                .contains("limit 653 lbf for the innerduct tension (above the chart)")
                .contains("limit 180 lbf for the hold force on the live cable (above the chart)");
    }

    /** The scale bars are round numbers of the unit that they name. */
    @ParameterizedTest
    @MethodSource("samples")
    void scaleBarsAreAsLongAsTheySay(SpanExplanation explained) {
        String metric = SpanSheetSvg.draw(explained, UnitSystem.METRIC);
        String us = SpanSheetSvg.draw(explained, UnitSystem.US);

        assertThat(pxPerUnit(us, "ft") / 0.3048)
                .isCloseTo(pxPerUnit(metric, "m"), within(0.01 * pxPerUnit(metric, "m")));
        if (metric.contains(" mm</text>")) {
            assertThat(pxPerUnit(us, "in") / 25.4)
                    .isCloseTo(pxPerUnit(metric, "mm"), within(0.01 * pxPerUnit(metric, "mm")));
        }
    }

    /** Reads the bar that is drawn just before its label: a line, and in the plan two ticks at its ends. */
    private static double pxPerUnit(String svg, String unit) {
        var label = Pattern.compile(">([\\d.]+) " + unit + "</text>").matcher(svg);
        assertThat(label.find()).as(unit).isTrue();
        var bar = Pattern.compile("<line x1=\"([\\d.]+)\" y1=\"([\\d.]+)\" x2=\"([\\d.]+)\" y2=\"\\2\"")
                .matcher(svg.substring(0, label.start()));
        double lengthPx = 0;
        while (bar.find()) {
            lengthPx = Double.parseDouble(bar.group(3)) - Double.parseDouble(bar.group(1));
        }
        return lengthPx / Double.parseDouble(label.group(1));
    }

    private static List<String> words(String svg) {
        return Pattern.compile("<text [^>]*>([^<]*)</text>")
                .matcher(svg)
                .results()
                .map(found -> found.group(1))
                .toList();
    }

    private static List<ExplanationValue.Figure> figures(ExplanationPart part) {
        var figures = new ArrayList<ExplanationValue.Figure>();
        collect(part, figures);
        return figures;
    }

    private static void collect(ExplanationPart part, List<ExplanationValue.Figure> into) {
        if (part instanceof ExplanationItem item) {
            collect(item.value(), into);
        } else if (part instanceof ExplanationLine line) {
            line.parts().forEach(inner -> collect(inner, into));
        } else if (part instanceof ExplanationTable table) {
            table.rows().forEach(row -> row.forEach(inner -> collect(inner, into)));
        } else if (part instanceof ExplanationSection section) {
            section.parts().forEach(inner -> collect(inner, into));
        } else if (part instanceof ExplanationSections several) {
            several.sections().forEach(inner -> collect(inner, into));
        }
    }

    private static void collect(ExplanationValue value, List<ExplanationValue.Figure> into) {
        if (value instanceof ExplanationValue.Figure number) {
            into.add(number);
        } else if (value instanceof ExplanationValue.Several several) {
            several.values().forEach(inner -> collect(inner, into));
        }
    }
}
