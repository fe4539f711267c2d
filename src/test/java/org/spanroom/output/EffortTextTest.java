package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ShippedConfig;
import org.spanroom.effort.EffortAssessor;
import org.spanroom.model.Assessment;
import org.spanroom.model.EffortLine;
import org.spanroom.model.Permits;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.Reckoning;

class EffortTextTest {
    private static Reckoning withEffort(Reckoning plain) {
        var assessor = new EffortAssessor(ShippedConfig.get().rates());
        Assessment before = plain.ranked().assessment();
        var quantities = assessor.quantities(before.span(), before.room(), before.pull(), Permits.NONE);
        var assessment = new Assessment(
                before.span(),
                before.bends(),
                before.room(),
                before.pull(),
                Permits.NONE,
                Optional.of(assessor.effort(quantities)));
        var ranked =
                new RankedSpan(plain.ranked().rank(), assessment, plain.ranked().score());
        List<EffortLine> lines = assessor.lines(quantities);
        return new Reckoning(ranked, plain.spansInRun(), plain.pulling(), plain.traces(), lines, "crowns", List.of());
    }

    @Test
    void everyLineIsQuantityTimesRateAndNamesItsSource() {
        String text = ReckoningText.write(withEffort(ReckoningSample.workedExample()));

        assertThat(text)
                .containsPattern("(?m)^Effort: \\d\\.\\d h on site, [0-9,]+ crowns; saves [0-9,]+ over new build$")
                .containsPattern("(?m)^    opening +A +1 x vault_opening_hours +0\\.1 x 0\\.75 = +0\\.08$")
                .containsPattern("(?m)^    pulling +548\\.6392 / pull_feed_m_per_hour +330 = +1\\.66$")
                .contains("Cost of recovery, crowns", "Cost of new build, crowns")
                .containsPattern("(?m)^    illustrative \\(2026-11-25\\): briefing_hours 0\\.15 to 0\\.5, ")
                .contains("EPA WARM v16, exhibit 5-11");
        assertThat(text.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(TextPage.WIDTH));
    }

    @Test
    void cautionsStandWhereSomebodyCouldBeHurt() {
        String dry = ReckoningText.write(withEffort(ReckoningSample.workedExample()));

        assertThat(dry)
                .contains("Before anyone works here", "29 CFR 1910.146", "19.5 to 23.5 %", "attendant outside")
                .contains("Live cables lie in this duct", "Local codes, the owner's rules")
                .doesNotContain("Water is recorded here", "at night only");
        assertThat(ReckoningText.write(ReckoningSample.nothingToPull()))
                .contains("29 CFR 1910.146")
                .doesNotContain("Live cables lie in this duct", "Effort: ");
    }

    @Test
    void theJsonTellsTheSame() throws IOException {
        Reckoning reckoning = withEffort(ReckoningSample.workedExample());
        JsonNode json = new ObjectMapper().readTree(ReckoningJson.write(reckoning));

        assertThat(json.get("effort").get("currency").asText()).isEqualTo("crowns");
        assertThat(json.get("effort").get("lines"))
                .hasSize(reckoning.effortLines().size());
        JsonNode first = json.get("effort").get("lines").get(0);
        assertThat(first.get("rate").asText()).isEqualTo("briefing_hours");
        assertThat(first.get("source").asText()).isEqualTo("illustrative");
        assertThat(json.get("safety")).isNotEmpty();
        JsonNode without = new ObjectMapper().readTree(ReckoningJson.write(ReckoningSample.nothingToPull()));
        assertThat(without.get("effort").isNull()).isTrue();
    }
}
