package org.spanroom.output.explain;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ShippedConfig;
import org.spanroom.effort.EffortAssessor;
import org.spanroom.model.effort.EffortLine;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.SpanExplanationSample;

class ExplanationEffortTest {
    private static final MoneyRanges RANGES =
            new MoneyRanges(new MoneyRange(1, 1.5, 2), new MoneyRange(3, 3.5, 4), new MoneyRange(5, 5.5, 6));

    private static SpanExplanation withEffort(SpanExplanation plain) {
        var assessor = new EffortAssessor(
                ShippedConfig.get().rates(),
                ShippedConfig.get().vaultKinds(),
                ShippedConfig.get().room().demandPositions());
        Assessment before = plain.ranked().assessment();
        var quantities = assessor.quantities(before.span(), before.room(), before.pull(), Permits.NONE);
        var assessment = new Assessment(
                before.span(),
                before.bends(),
                before.room(),
                before.pull(),
                Permits.NONE,
                Optional.of(assessor.effort(quantities)));
        var ranked = new RankedSpan(
                        plain.ranked().rank(), assessment, plain.ranked().score())
                .withMoney(Optional.of(RANGES));
        List<EffortLine> lines = assessor.lines(quantities);
        return new SpanExplanation(
                ranked, plain.recorded(), plain.pulling(), plain.traces(), lines, "crowns", List.of());
    }

    @Test
    void everyLineIsQuantityTimesRateAndNamesItsSource() {
        String text = SpanExplanationSample.text(withEffort(SpanExplanationSample.workedExample()));

        assertThat(text)
                .containsPattern("(?m)^  on site +\\d\\.\\d\\d h$")
                .containsPattern("(?m)^  cost of recovery +[0-9,.]+ crowns$")
                .containsPattern("(?m)^    opening +A +1 +x +vault_opening_hours +0\\.1 +0\\.75 +0\\.075$")
                .containsPattern("(?m)^    pulling +548\\.64 +/ +pull_feed_m_per_hour +330 +1 +1\\.6625$")
                .contains("Cost of recovery, crowns", "Cost of new build, crowns")
                .containsPattern("(?m)^    briefing_hours +0\\.15 +0\\.25 +0\\.5 +2026-11-25 +illustrative$");
        assertThat(text.replaceAll("\\s+", " ")).contains("EPA WARM v16, exhibit 5-11");
        assertThat(text.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(TextPage.WIDTH));
    }

    @Test
    void cautionsStandWhereSomebodyCouldBeHurt() {
        String dry = SpanExplanationSample.text(withEffort(SpanExplanationSample.workedExample()));

        assertThat(dry)
                .contains("Before anyone works here", "29 CFR 1910.146", "19.5 to 23.5 %", "attendant outside")
                .contains("This duct has live cables", "Local codes, the owner's rules")
                .doesNotContain("Water is recorded here", "at night only");
        assertThat(SpanExplanationSample.text(SpanExplanationSample.nothingToPull()))
                .contains("29 CFR 1910.146")
                .doesNotContain("This duct has live cables", "Effort: ");
    }

    /**
     * 180 lbf, 30 % of 600 (ICEA S-87-640), and for 1-1/4 in SDR 13.5 some 653 lbf (1100 psi, PPI 12-hour value), by hand 2902 N for the
     * wall of 3.12 mm: the limits that the pull was calculated against.
     */
    @Test
    void theForcesToStopAtAreTheLimits() {
        String text = SpanExplanationSample.text(withEffort(SpanExplanationSample.failing()))
                .replaceAll("\\s+", " ");

        assertThat(text)
                .contains(
                        "When to stop",
                        "The rod or camera does not pass",
                        "does not move the innerduct at the PAUSE force on its sheet",
                        "A pull exceeds 2,902 N (652 lbf)")
                .contains("hold force on a live cable exceeds 801 N (180 lbf)");
    }

    @Test
    void theJsonTellsTheSame() throws IOException {
        SpanExplanation explained = withEffort(SpanExplanationSample.workedExample());
        JsonNode json = new ObjectMapper().readTree(SpanExplanationSample.json(explained));

        assertThat(json.get("effort").get("currency").asText()).isEqualTo("crowns");
        assertThat(json.get("effort").get("lines"))
                .hasSize(explained.effortLines().size());
        JsonNode first = json.get("effort").get("lines").get(0);
        assertThat(first.get("rate").asText()).isEqualTo("traffic_control_hours");
        assertThat(first.get("source").asText()).isEqualTo("illustrative");
        assertThat(json.get("safety")).isNotEmpty();
        assertThat(json.get("stop_rules")).hasSize(5);
        assertThat(json.get("effort").get("saving_low_money").asDouble()).isEqualTo(5);
        assertThat(json.get("effort").get("saving_likely_money").asDouble()).isEqualTo(5.5);
        assertThat(json.get("effort").get("recovery_high_money").asDouble()).isEqualTo(2);
        JsonNode without =
                new ObjectMapper().readTree(SpanExplanationSample.json(SpanExplanationSample.nothingToPull()));
        assertThat(without.get("effort").isNull()).isTrue();
        assertThat(without.has("stop_rules")).isFalse();
    }
}
