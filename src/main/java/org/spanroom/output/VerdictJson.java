package org.spanroom.output;

import java.io.IOException;
import org.spanroom.model.Exclusion;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.Reckoning;
import org.spanroom.model.Score;
import org.spanroom.model.Sureness;

/** What the gates say, the cautions, and the parts of the score, as members of a reckoning's JSON. */
final class VerdictJson {
    private final Reckoning reckoning;
    private final RankedSpan ranked;
    private final JsonPen json;

    VerdictJson(Reckoning reckoning, JsonPen json) {
        this.reckoning = reckoning;
        this.ranked = reckoning.ranked();
        this.json = json;
    }

    void write() throws IOException {
        json.text("exclusion", ranked.verdict().findFirst().map(Exclusion::key).orElse(""));
        json.texts("exclusions", ranked.verdict().exclusions(), Exclusion::key);
        json.objects("gates", reckoning.gates(), answer -> {
            json.text("gate", answer.gate().key());
            json.text("answer", answer.word());
            json.flag("open", answer.open());
            json.text("evidence", answer.evidence());
        });
        json.objects("open_gates", ranked.verdict().waived(), reason -> {
            json.text("key", reason.key());
            json.text("sentence", reason.explanation());
        });
        json.objects("cautions", ranked.verdict().cautions(), caution -> {
            json.text("key", caution.key());
            json.text("sentence", caution.explanation());
        });
        json.object("score", this::score);
        if (ranked.sureness().isPresent()) {
            Sureness sure = ranked.sureness().get();
            json.object("sureness", () -> {
                json.real("feasible_chance_percent", 100 * sure.feasibleRatio(), 1);
                json.real("score_low_points", sure.scoreLowPoints(), 2);
                json.real("score_high_points", sure.scoreHighPoints(), 2);
                json.real("top_chance_percent", 100 * sure.topRatio(), 1);
            });
        }
    }

    private void score() throws IOException {
        Score score = ranked.score();
        json.real("total_points", score.totalPoints(), 2);
        json.objects("parts", score.parts(), part -> {
            json.text("criterion", part.criterion());
            json.real("quantity_in_unit", part.quantityInUnit(), 3);
            json.text("unit", part.unit());
            json.real("value_ratio", part.valueRatio(), 4);
            json.real("weight_ratio", part.weightRatio(), 4);
            json.real("points", part.points(), 2);
        });
    }
}
