package org.spanroom.output.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.pull.PullTrace;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.SpanExplanationSample;
import org.spanroom.output.explain.Explanation;
import org.spanroom.output.explain.ExplanationText;

class DetailJsonTest {
    private static final double LBF_N = 4.4482216152605;

    private final SpanExplanation explained = SpanExplanationSample.workedExample();

    /** Laid out words are the words of the text, one after another, whatever blanks are between them. */
    @ParameterizedTest
    @EnumSource(UnitSystem.class)
    void everyWordOfTheTextIsThereAndNoOther(UnitSystem units) throws IOException {
        String text = ExplanationText.write(Explanation.of(explained, units));

        var words = new ArrayList<String>();
        collect(json(units).get(0).get("tree"), words);

        assertEquals(sorted(text.replaceAll("(?m)^ *- ", "")), sorted(String.join(" ", words)));
    }

    private static List<String> sorted(String words) {
        return Stream.of(words.split("\\s+"))
                .filter(word -> !word.isEmpty())
                .sorted()
                .toList();
    }

    /** The first of an array says what it is and is no word. */
    private static void collect(JsonNode part, List<String> words) {
        for (int i = 1; i < part.size(); i++) {
            boolean ofParts = part.get(0).asText().equals("s") && part.get(i).isArray();
            if (ofParts) {
                part.get(i).forEach(inner -> collect(inner, words));
            } else {
                texts(part.get(i), words);
            }
        }
    }

    private static void texts(JsonNode node, List<String> words) {
        if (node.isTextual()) {
            words.add(node.asText());
        }
        node.forEach(inner -> texts(inner, words));
    }

    @Test
    void partsAreOfTheFourForms() throws IOException {
        JsonNode tree = json(UnitSystem.METRIC).get(0).get("tree");

        assertEquals("s", tree.get(0).asText());
        assertEquals("Span " + explained.span().id(), tree.get(1).asText());
        List<String> text = new ArrayList<>();
        forms(tree, text);
        assertTrue(text.containsAll(List.of("s", "i", "t", "p")), text.toString());
    }

    private static void forms(JsonNode part, List<String> found) {
        String form = part.get(0).asText();
        found.add(form);
        int expected = form.equals("t") ? 4 : form.equals("p") ? 2 : 3;
        assertEquals(expected, part.size(), part.toString());
        if (form.equals("s")) {
            part.get(2).forEach(inner -> forms(inner, found));
        } else if (form.equals("t")) {
            part.get(3).forEach(row -> assertEquals(part.get(2).size(), row.size()));
        }
    }

    /** The worked example pulls one innerduct; its dry forces were derived by hand: 128.83 lbf out at B, hold 17.93 lbf at A. */
    @Test
    void forcesRunFromTheAnchorToThePullingEnd() throws IOException {
        JsonNode outAtB = json(UnitSystem.US).get(0).get("pulls").get(1);

        assertEquals(explained.span().to().id(), outAtB.get("pulling_vault").asText());
        assertEquals(0, outAtB.get("at").get(0).asDouble());
        int last = outAtB.get("at").size() - 1;
        assertEquals(600, outAtB.get("at").get(last).asDouble(), 0.01);
        assertEquals(128.83, outAtB.get("pull").get(last).asDouble(), 0.06);
        assertEquals(17.93, outAtB.get("hold").get(0).asDouble(), 0.06);
        assertEquals(last + 1, outAtB.get("pull").size());
        assertEquals(last + 1, outAtB.get("hold").size());
    }

    /** A limit is used as far at the pulling end as the force there uses the steady tension that is shown as allowed. */
    @Test
    void allowedTensionsAreThoseThatUseUpALimit() {
        List<SpanDetail.PullCurve> curves =
                SpanDetails.of(explained, UnitSystem.METRIC).pulls();
        PullTrace trace = explained.traces().get(0);

        for (int i = 0; i < 2; i++) {
            PullTrace.Way way = i == 0 ? trace.fromA() : trace.fromB();
            SpanDetail.PullCurve curve = curves.get(i);
            double most =
                    curve.pullN().stream().mapToDouble(force -> force).max().orElseThrow();
            double used = way.limits().stream()
                    .filter(limit -> limit.kind().name().equals("INNERDUCT_STRENGTH")
                            || limit.kind().name().equals("MACHINE_PULL"))
                    .mapToDouble(limit -> limit.utilizationRatio())
                    .max()
                    .orElseThrow();
            assertEquals(used, most / curve.allowedPullN(), 1e-9);
        }
    }

    @Test
    void numbersWithoutAValueAreNull() throws IOException {
        var curve = new SpanDetail.PullCurve(
                "I\u202e1",
                "V1",
                true,
                List.of(0.0, 10.0),
                List.of(0.0, 444.82216),
                List.of(5.0, 0.0),
                1000,
                Double.NaN);
        var detail = new SpanDetail("S", Explanation.of(explained), List.of(), List.of(curve), List.of());

        JsonNode pull = json(List.of(detail), List.of(7), UnitSystem.US).get(0);

        assertEquals(7, pull.get("row").asInt());
        JsonNode written = pull.get("pulls").get(0);
        assertTrue(written.get("allowed_hold").isNull());
        assertEquals(1000 / LBF_N, written.get("allowed_pull").asDouble(), 0.05);
        assertEquals(100, written.get("pull").get(1).asDouble(), 0.05);
        assertEquals("I?1", written.get("innerduct").asText());
    }

    @Test
    void aRowIsNeededForEachDetail() {
        SpanDetail detail = SpanDetails.of(explained, UnitSystem.METRIC);

        assertThrows(IllegalArgumentException.class, () -> json(List.of(detail), List.of(), UnitSystem.METRIC));
    }

    private JsonNode json(UnitSystem units) throws IOException {
        return json(List.of(SpanDetails.of(explained, units)), List.of(0), units);
    }

    private static JsonNode json(List<SpanDetail> details, List<Integer> rows, UnitSystem units) throws IOException {
        var text = new StringWriter();
        try (JsonGenerator generator = new JsonFactory().createGenerator(text)) {
            DetailJson.write(details, rows, units, generator);
        }
        return new ObjectMapper().readTree(text.toString());
    }
}
