package org.spanroom.output.explain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.output.SpanExplanationSample.FT_M;
import static org.spanroom.output.SpanExplanationSample.LBF_N;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.SpanExplanationSample;
import org.spanroom.output.table.Text;

class ExplanationJsonTest {
    /** Values of the worked example, converted. */
    @Test
    void theWorkedExampleIsToldInFull() throws JsonProcessingException {
        JsonNode json = parsed(SpanExplanationSample.workedExample());

        assertThat(json.at("/length_m").asDouble() / FT_M).isCloseTo(600, within(0.05));
        assertThat(json.at("/bends/0/middle_m").asDouble() / FT_M).isCloseTo(150, within(0.02));
        assertThat(json.at("/bends/1/radius_assumed").asBoolean()).isTrue();
        assertThat(json.at("/pull/outcome").asText()).isEqualTo("both");
        assertThat(json.at("/pull/failing").isNull()).isTrue();
        JsonNode outAtB = json.at("/pull/innerducts/0/ways/1");
        assertThat(outAtB.at("/out_at").asText()).isEqualTo("b");
        assertThat(outAtB.at("/held_at").asText()).isEqualTo("a");
        assertThat(outAtB.at("/forces/1/friction").asText()).isEqualTo("dry");
        assertThat(outAtB.at("/forces/1/pull_n").asDouble() / LBF_N).isCloseTo(128.83, within(0.02));
        assertThat(outAtB.at("/forces/1/hold_n").asDouble() / LBF_N).isCloseTo(17.93, within(0.01));
        assertThat(outAtB.at("/sections")).hasSize(5);
        assertThat(outAtB.at("/sections/1/section").asText()).isEqualTo("bend");
        assertThat(outAtB.at("/sections/1/turn_deg").asDouble()).isEqualTo(45);
        assertThat(outAtB.at("/sections/1/far/innerduct_n").asDouble() / LBF_N).isCloseTo(35.77, within(0.02));
        assertThat(outAtB.at("/sections/0/radius_m").isNull()).isTrue();
        assertThat(outAtB.at("/fall_off/2/pull_n").asDouble() / LBF_N).isCloseTo(53.5, within(0.06));
        assertThat(outAtB.at("/limits/0/limit").asText()).isEqualTo("innerduct_bend_radius");
        assertThat(outAtB.at("/limits/0/allowed_is_least").asBoolean()).isTrue();
        assertThat(json.at("/pull/settings/limits/hold_allowed_n").asDouble() / LBF_N)
                .isCloseTo(180, within(0.1));
        assertThat(json.at("/score/total_points").asDouble()).isEqualTo(70);
    }

    @Test
    void aFailureCarriesItsEvidence() throws JsonProcessingException {
        JsonNode failing = parsed(SpanExplanationSample.failing()).at("/pull/failing");

        assertThat(failing.at("/fails").asBoolean()).isTrue();
        assertThat(100
                        * failing.at("/found_in_unit").asDouble()
                        / failing.at("/allowed_in_unit").asDouble())
                .isCloseTo(failing.at("/utilization_pct").asDouble(), within(0.06));
    }

    @ParameterizedTest
    @MethodSource("samples")
    void everyNumberWithAFractionNamesItsUnit(SpanExplanation explained) throws JsonProcessingException {
        checkNames(parsed(explained));
    }

    @Test
    void theSameSpanGivesTheSameText() {
        assertThat(SpanExplanationSample.json(SpanExplanationSample.failing()))
                .isEqualTo(SpanExplanationSample.json(SpanExplanationSample.failing()))
                .startsWith("{\n  \"span_id\" : \"S-8\",\n  \"rank\" : 3,\n")
                .endsWith("}\n")
                .doesNotContain("NaN", "\r");
    }

    @Test
    void hostileIdsStayTexts() throws JsonProcessingException {
        SpanExplanation explained = SpanExplanationSample.hostile();

        JsonNode json = parsed(explained);

        assertThat(json.at("/span_id").asText())
                .isEqualTo(Text.clean(explained.ranked().span().id()));
        assertThat(json.at("/routes")).hasSize(2);
    }

    @Test
    void whereNothingIsToPullThePullsAreEmpty() throws JsonProcessingException {
        JsonNode pull = parsed(SpanExplanationSample.nothingToPull()).at("/pull");

        assertThat(pull.at("/outcome").asText()).isEqualTo("none");
        assertThat(pull.at("/better_end").isNull()).isTrue();
        assertThat(pull.at("/tightest").isNull()).isTrue();
        assertThat(pull.at("/innerducts")).isEmpty();
    }

    static Stream<SpanExplanation> samples() {
        return Stream.of(
                SpanExplanationSample.workedExample(),
                SpanExplanationSample.failing(),
                SpanExplanationSample.recordedAtA(),
                SpanExplanationSample.nothingToPull());
    }

    private static void checkNames(JsonNode node) {
        for (Map.Entry<String, JsonNode> member : node.properties()) {
            if (member.getValue().isFloatingPointNumber()) {
                assertThat(List.of(
                                "m", "mm", "mm2", "n", "deg", "pct", "ratio", "points", "unit", "mpa", "m3", "percent",
                                "minutes", "hours", "money", "kg", "l"))
                        .contains(member.getKey().substring(member.getKey().lastIndexOf('_') + 1));
            }
            checkNames(member.getValue());
        }
        if (node.isArray()) {
            node.forEach(ExplanationJsonTest::checkNames);
        }
    }

    private static JsonNode parsed(SpanExplanation explained) throws JsonProcessingException {
        return new ObjectMapper().readTree(SpanExplanationSample.json(explained));
    }
}
