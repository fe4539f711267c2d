package org.spanroom.output.explain;

import static org.spanroom.output.explain.ExplanationItem.flag;
import static org.spanroom.output.explain.ExplanationItem.number;
import static org.spanroom.output.explain.ExplanationItem.text;
import static org.spanroom.output.explain.ExplanationItem.words;

import java.util.List;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.GateAnswer;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.model.rank.Score;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.model.rank.Verdict;

/** What the gates say of a span, the cautions, the parts of its score, and how sure its standing is. */
final class ExplanationVerdict {
    private ExplanationVerdict() {}

    static List<ExplanationPart> of(SpanExplanation explained) {
        Verdict verdict = explained.ranked().verdict();
        return List.of(
                gates(verdict, explained.gates()),
                cautions(verdict),
                score(explained.ranked().score()),
                sureness(explained.recorded()));
    }

    private static ExplanationSection gates(Verdict verdict, List<GateAnswer> gates) {
        return new ExplanationSection(
                "",
                verdict.isExcluded() ? "Gates: out of the ranking" : "Gates: none excludes the span",
                List.of(
                        text(
                                "exclusion",
                                "",
                                verdict.findFirst().map(Exclusion::key).orElse("")),
                        words(
                                "exclusions",
                                "",
                                verdict.exclusions().stream()
                                        .map(Exclusion::key)
                                        .toList()),
                        ExplanationTable.of(
                                "gates",
                                "",
                                gates,
                                answer -> List.of(
                                        text("gate", "gate", answer.gate().key()),
                                        text("answer", "answer", answer.word()),
                                        flag("open", "switched off", answer.open()),
                                        text("evidence", "evidence", answer.evidence())))));
    }

    private static ExplanationSection cautions(Verdict verdict) {
        return new ExplanationSection(
                "",
                verdict.cautionKeys().isEmpty() ? "Cautions: none" : "Cautions",
                List.of(
                        ExplanationTable.of(
                                "open_gates",
                                "Of gates that are switched off",
                                verdict.waived().stream().toList(),
                                reason -> caution(reason.key(), reason.explanation())),
                        ExplanationTable.of(
                                "cautions",
                                "",
                                verdict.cautions().stream().toList(),
                                caution -> caution(caution.key(), caution.explanation()))));
    }

    private static List<ExplanationPart> caution(String key, String sentence) {
        return List.of(text("key", "key", key), text("sentence", "meaning", sentence));
    }

    private static ExplanationSection score(Score score) {
        return new ExplanationSection(
                "score",
                "Score",
                List.of(
                        number("total_points", "of 100 points", score.totalPoints(), 2, ""),
                        ExplanationTable.of("parts", "", score.parts(), ExplanationVerdict::part)));
    }

    private static List<ExplanationPart> part(Score.Part part) {
        return List.of(
                text("criterion", "criterion", part.criterion()),
                number("quantity_in_unit", "quantity", part.quantityInUnit(), 4, part.unit()),
                text("unit", "", part.unit()),
                number("value_ratio", "value", part.valueRatio(), 4, ""),
                number("weight_ratio", "weight", part.weightRatio(), 4, ""),
                number("points", "points", part.points(), 2, ""));
    }

    private static ExplanationPart sureness(RecordedStanding recorded) {
        if (!recorded.isSimulated()) {
            return new ExplanationItem("sureness", "", ExplanationValue.ABSENT);
        }
        return new ExplanationSection(
                "sureness",
                "With what is assumed or uncertain varied",
                List.of(
                        number("feasible_chance_percent", "chance to be feasible", recorded.feasiblePercent(), 1, "%"),
                        number("score_low_points", "score exceeded in 9 of 10 cases", recorded.scoreLowPoints(), 2, ""),
                        number(
                                "score_high_points",
                                "score exceeded in 1 of 10 cases",
                                recorded.scoreHighPoints(),
                                2,
                                ""),
                        number("top_chance_percent", "chance to be among the top", recorded.topPercent(), 1, "%")));
    }
}
