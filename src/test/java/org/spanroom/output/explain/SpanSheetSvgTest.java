package org.spanroom.output.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.output.SpanExplanationSample.LBF_N;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.SpanExplanationSample;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class SpanSheetSvgTest {
    /** A parser of XML 1.0 that ends at the first breach of the standard. */
    @ParameterizedTest
    @MethodSource("samples")
    void theSheetIsWellFormedWhateverTheIds(SpanExplanation explained) throws Exception {
        Document sheet = parsed(explained);

        assertThat(sheet.getDocumentElement().getTagName()).isEqualTo("svg");
        assertThat(sheet.getElementsByTagName("script").getLength()).isZero();
        assertThat(elements(sheet, "title").get(0).getTextContent()).startsWith("Span ");
    }

    /**
     * The last points of the lines, read off the axes: 573.1 N and 79.8 N (128.83 and 17.93 lbf) when pulled out at B, 559.1 N and
     * 83.0 N (125.69 and 18.65 lbf) when pulled out at A.
     */
    @Test
    void theDiagramsShowTheForcesOfTheWorkedExample() throws Exception {
        Document sheet = parsed(SpanExplanationSample.workedExample());

        List<List<double[]>> lines = polylines(sheet);

        assertThat(lines).hasSize(5);
        assertThat(forceN(sheet, lines.get(1), 0, 0)).isCloseTo(125.69 * LBF_N, within(1.5));
        assertThat(forceN(sheet, lines.get(2), 0, 1)).isCloseTo(128.83 * LBF_N, within(1.5));
        assertThat(forceN(sheet, lines.get(3), 1, 1)).isCloseTo(18.65 * LBF_N, within(0.5));
        assertThat(forceN(sheet, lines.get(4), 1, 0)).isCloseTo(17.93 * LBF_N, within(0.5));
    }

    @Test
    void aLimitIsDrawnWhereItLiesInTheDiagramAndSaidWhereItDoesNot() throws Exception {
        List<String> far = words(parsed(SpanExplanationSample.workedExample()));
        List<String> near = words(parsed(SpanExplanationSample.failing()));

        assertThat(far)
                .contains("limit 2,906 N for the innerduct tension (above the chart)")
                .contains("limit 801 N for the hold force on the live cable (above the chart)");
        // 2906 / 1.3 and 801 / 1.3.
        assertThat(near)
                .contains("dotted line: limit 2,906 N for the innerduct tension at breakaway, which is 2,235 N steady")
                .contains("dotted line: limit 801 N for the hold force on the live cable at breakaway, which is "
                        + "616 N steady");
        assertThat(limitLines(SpanExplanationSample.workedExample())).isZero();
        assertThat(limitLines(SpanExplanationSample.failing())).isEqualTo(2);
    }

    /** Each bend has its number in the plan, in the list and in both diagrams. */
    @Test
    void bendsAreNumberedEverywhere() throws Exception {
        List<String> words = words(parsed(SpanExplanationSample.failing()));

        for (String number : List.of("1", "2", "3", "4", "5", "6")) {
            assertThat(words).filteredOn(number::equals).hasSize(4);
        }
        assertThat(words).contains("60\u00B0 left, radius 0.91 m assumed", "41.0", "N", "A", "B", "V-1", "V-2");
    }

    @Test
    void moreBendsThanTheListHoldsAreCounted() throws Exception {
        List<String> words = words(parsed(SpanExplanationSample.random(1, 40)));

        assertThat(words).contains("and 28 more; the text lists them");
    }

    /** Boxes by the widths that the drawing itself uses, in letters drawn from their base line. */
    @ParameterizedTest
    @MethodSource("samples")
    void noTwoLabelsCollide(SpanExplanation explained) throws Exception {
        Document sheet = parsed(explained);
        // The cross-section below is a drawing of its own, in its own frame.
        List<Element> labels = elements(sheet, "text").stream()
                .filter(label -> label.getParentNode() == sheet.getDocumentElement())
                .toList();

        assertThat(labels).isNotEmpty();
        for (int i = 0; i < labels.size(); i++) {
            Box one = box(labels.get(i));
            assertThat(new Box(0, 0, 1000, 1368).holds(one))
                    .as(labels.get(i).getTextContent())
                    .isTrue();
            for (int j = 0; j < i; j++) {
                assertThat(one.overlaps(box(labels.get(j))))
                        .as(
                                "%s over %s",
                                labels.get(i).getTextContent(), labels.get(j).getTextContent())
                        .isFalse();
            }
        }
    }

    /** In a gray print only the dashes distinguish the lines. */
    @Test
    void theTwoWaysDifferInTheirDashes() throws Exception {
        List<Element> lines = elements(parsed(SpanExplanationSample.workedExample()), "polyline");

        assertThat(lines)
                .extracting(line -> line.getAttribute("stroke-dasharray"))
                .containsExactly("", "", "9 4", "", "9 4");
    }

    @Test
    void whereNothingIsToPullTheSheetSaysWhy() throws Exception {
        Document sheet = parsed(SpanExplanationSample.nothingToPull());

        assertThat(words(sheet)).contains("no innerduct to pull: no rigid innerduct in the duct", "No bends");
        assertThat(polylines(sheet)).hasSize(1);
    }

    static Stream<SpanExplanation> samples() {
        return Stream.concat(
                Stream.of(
                        SpanExplanationSample.workedExample(),
                        SpanExplanationSample.failing(),
                        SpanExplanationSample.hostile(),
                        SpanExplanationSample.nothingToPull()),
                LongStream.rangeClosed(1, 12).mapToObj(seed -> SpanExplanationSample.random(seed, (int) (3 * seed))));
    }

    private static Document parsed(SpanExplanation explained) throws Exception {
        byte[] bytes = SpanSheetSvg.draw(explained, UnitSystem.METRIC).getBytes(StandardCharsets.UTF_8);
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(bytes));
    }

    private static List<Element> elements(Document document, String name) {
        NodeList nodes = document.getElementsByTagName(name);
        var list = new ArrayList<Element>();
        for (int i = 0; i < nodes.getLength(); i++) {
            list.add((Element) nodes.item(i));
        }
        return list;
    }

    private static List<String> words(Document document) {
        return elements(document, "text").stream().map(Element::getTextContent).toList();
    }

    private static List<List<double[]>> polylines(Document document) {
        return elements(document, "polyline").stream()
                .map(line -> Stream.of(line.getAttribute("points").split(" ", -1))
                        .map(point -> Stream.of(point.split(",", -1))
                                .mapToDouble(Double::parseDouble)
                                .toArray())
                        .toList())
                .toList();
    }

    /** Reads the force of a line's end (0 at A, 1 at B) off the axis of a diagram (0 above, 1 below). */
    private static double forceN(Document document, List<double[]> line, int diagram, int end) {
        double xPx = end == 0 ? 90 : 960;
        double yPx = line.stream()
                .filter(point -> Math.abs(point[0] - xPx) < 0.02)
                .findFirst()
                .orElseThrow()[1];
        List<Element> ticks = elements(document, "text").stream()
                .filter(text -> text.getAttribute("x").equals("82"))
                .toList();
        Element zero = ticks.get(5 * diagram);
        Element top = ticks.get(5 * diagram + 4);
        double zeroPx = Double.parseDouble(zero.getAttribute("y")) - 4;
        double topPx = Double.parseDouble(top.getAttribute("y")) - 4;
        return (zeroPx - yPx) / (zeroPx - topPx) * Double.parseDouble(top.getTextContent());
    }

    private static long limitLines(SpanExplanation explained) throws Exception {
        return elements(parsed(explained), "line").stream()
                .filter(line -> line.getAttribute("stroke-dasharray").equals("2 3"))
                .count();
    }

    private static Box box(Element text) {
        int sizePx = Integer.parseInt(text.getAttribute("font-size"));
        double widthPx = Svg.widthPx(text.getTextContent(), sizePx);
        double xPx = Double.parseDouble(text.getAttribute("x"));
        double basePx = Double.parseDouble(text.getAttribute("y"));
        double leftPx = switch (text.getAttribute("text-anchor")) {
            case "start" -> xPx;
            case "middle" -> xPx - widthPx / 2;
            default -> xPx - widthPx;
        };
        return new Box(leftPx, basePx - 0.72 * sizePx, leftPx + widthPx, basePx);
    }
}
