package org.spanroom.output.explain;

import org.spanroom.model.UnitSystem;
import org.spanroom.model.pull.PullOutcome;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.GateAnswer;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.model.rank.Score;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.model.rank.Verdict;

/** What the gates say of a span, the cautions, the parts of its score, and the confidence in its rank. */
final class ExplanationVerdict {
    private ExplanationVerdict() {}

    static void add(ExplanationParts parts, SpanExplanation explained, UnitSystem units) {
        Verdict verdict = explained.ranked().verdict();
        Score score = explained.ranked().score();
        parts.add(gates(explained, units))
                .add(cautions(verdict))
                .add(new ExplanationParts()
                        .number("total_points", "of 100 points", score.totalPoints(), 2, "")
                        .table("parts", "", score.parts(), ExplanationVerdict::part)
                        .section("score", "Score"))
                .add(sureness(explained.recorded()));
    }

    private static ExplanationSection gates(SpanExplanation explained, UnitSystem units) {
        Verdict verdict = explained.ranked().verdict();
        return new ExplanationParts()
                .text("exclusion", "", verdict.findFirst().map(Exclusion::key).orElse(""))
                .words("exclusions", "", verdict.exclusions(), Exclusion::key)
                .table(
                        "gates",
                        "",
                        explained.gates(),
                        (row, answer) -> row.text("gate", "gate", answer.gate().key())
                                .text("answer", "answer", answer.word())
                                .flag("open", "switched off", answer.open())
                                .text("evidence", "evidence", evidence(answer, explained, units)))
                .section(
                        "",
                        verdict.isExcluded() ? "Gates: excluded from the ranking" : "Gates: none excludes the span");
    }

    /** The gate of the pull repeats the answer of the pull. */
    private static String evidence(GateAnswer answer, SpanExplanation explained, UnitSystem units) {
        PullOutcome outcome = explained.assessment().pull().outcome();
        return answer.evidence().equals(outcome.summary()) ? outcome.summary(units) : answer.evidence();
    }

    private static ExplanationSection cautions(Verdict verdict) {
        return new ExplanationParts()
                .table(
                        "open_gates",
                        "From gates that are switched off",
                        verdict.waived(),
                        (row, reason) ->
                                row.text("key", "key", reason.key()).text("sentence", "meaning", reason.explanation()))
                .table(
                        "cautions",
                        "",
                        verdict.cautions(),
                        (row, caution) -> row.text("key", "key", caution.key())
                                .text("sentence", "meaning", caution.explanation()))
                .section("", verdict.cautionKeys().isEmpty() ? "Cautions: none" : "Cautions");
    }

    private static void part(ExplanationParts row, Score.Part part) {
        row.text("criterion", "criterion", part.criterion())
                .number("quantity_in_unit", "quantity", part.quantityInUnit(), 4, part.unit())
                .text("unit", "", part.unit())
                .number("value_ratio", "value", part.valueRatio(), 4, "")
                .number("weight_ratio", "weight", part.weightRatio(), 4, "")
                .number("points", "points", part.points(), 2, "");
    }

    private static ExplanationPart sureness(RecordedStanding recorded) {
        if (!recorded.isSimulated()) {
            return new ExplanationItem("sureness", "", ExplanationValue.ABSENT, "");
        }
        return new ExplanationParts()
                .number("feasible_chance_percent", "feasible chance", recorded.feasiblePercent(), 1, "%")
                .number("score_low_points", "score P10", recorded.scoreLowPoints(), 2, "")
                .number("score_high_points", "score P90", recorded.scoreHighPoints(), 2, "")
                .number("top_chance_percent", "probability among the top", recorded.topPercent(), 1, "%")
                .section("sureness", "Simulation: assumed and uncertain values varied");
    }
}
