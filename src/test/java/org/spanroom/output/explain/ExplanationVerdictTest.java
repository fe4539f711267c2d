package org.spanroom.output.explain;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.GateAnswer;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.model.rank.Verdict;
import org.spanroom.output.SampleResults;
import org.spanroom.output.SpanExplanationSample;

class ExplanationVerdictTest {
    private static final Exclusion BLOCKED = new Exclusion(4, "duct_blocked", "duct recorded as blocked");
    private static final Exclusion SPLICE = new Exclusion(6, "splice_inside", "a cable is spliced");
    private static final Exclusion PULL_FAILS = new Exclusion(13, "pull_fails", "on paper nothing comes out");

    @Test
    void gatesCautionsAndPartsOfTheScoreAreListed() {
        assertThat(SpanExplanationSample.text(excluded()))
                .containsPattern("ranking +not ranked\n +because +duct recorded as blocked\n")
                .contains("Gates: excluded from the ranking\n")
                .containsPattern("  duct_blocked +excluded +recorded as blocked\n")
                .containsPattern("  splice_inside +passed +not recorded\n")
                .containsPattern("  pull_fails +open +yes +possible from neither end\n")
                .containsPattern("Cautions\n  From gates that are switched off\n.*\n +pull_fails +on paper ")
                .containsPattern("  water +flooded duct")
                .containsPattern("  criterion +quantity +value +weight +points\n")
                .containsPattern("  ease_bends +90 degrees +1 +0\\.1 +10\\.00\n");
    }

    @Test
    void noLineOfTheVerdictIsWiderThanThePage() {
        assertThat(SpanExplanationSample.text(excluded()).lines())
                .allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(TextPage.WIDTH));
    }

    @Test
    void programsGetTheSame() throws JsonProcessingException {
        JsonNode json = new ObjectMapper().readTree(SpanExplanationSample.json(excluded()));

        assertThat(json.at("/exclusion").asText()).isEqualTo("duct_blocked");
        assertThat(json.at("/exclusions")).hasSize(1);
        assertThat(json.at("/gates")).hasSize(3);
        assertThat(json.at("/gates/0/answer").asText()).isEqualTo("excluded");
        assertThat(json.at("/gates/2/open").asBoolean()).isTrue();
        assertThat(json.at("/open_gates/0/key").asText()).isEqualTo("pull_fails");
        assertThat(json.at("/cautions/0/sentence").asText()).startsWith("flooded duct");
        assertThat(json.at("/score/parts/2/quantity_in_unit").asDouble()).isEqualTo(90);
    }

    private static SpanExplanation excluded() {
        SpanExplanation sample = SpanExplanationSample.workedExample();
        var ranked = new RankedSpan(
                OptionalInt.empty(),
                sample.ranked().assessment(),
                sample.ranked().score(),
                new Verdict(List.of(BLOCKED), List.of(PULL_FAILS), List.of(SampleResults.WATER)));
        return new SpanExplanation(
                ranked,
                sample.recorded(),
                sample.pulling(),
                sample.traces(),
                List.of(),
                "",
                List.of(
                        new GateAnswer(BLOCKED, false, true, "recorded as blocked"),
                        new GateAnswer(SPLICE, false, false, "not recorded"),
                        new GateAnswer(PULL_FAILS, true, true, "possible from neither end")));
    }
}
