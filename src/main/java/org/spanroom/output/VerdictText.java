package org.spanroom.output;

import org.spanroom.model.Caution;
import org.spanroom.model.Exclusion;
import org.spanroom.model.GateAnswer;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.Reckoning;
import org.spanroom.model.Score;
import org.spanroom.model.Sureness;
import org.spanroom.model.Verdict;

/** What the gates say, the cautions, and the parts of the score, as the last sections of a reckoning's text. */
final class VerdictText {
    private final Reckoning reckoning;
    private final RankedSpan ranked;
    private final TextPage page;

    VerdictText(Reckoning reckoning, TextPage page) {
        this.reckoning = reckoning;
        this.ranked = reckoning.ranked();
        this.page = page;
    }

    void write() {
        gates();
        cautions();
        score();
    }

    private void gates() {
        if (reckoning.gates().isEmpty()) {
            return;
        }
        page.gap();
        page.line("Gates: %s", gatesInShort(ranked.verdict()));
        for (GateAnswer answer : reckoning.gates()) {
            page.hanging(
                    36,
                    "  %-22s %-9s  %s",
                    answer.gate().key(),
                    answer.word(),
                    answer.open() && answer.holds() ? "not asked for; " + answer.evidence() : answer.evidence());
        }
    }

    private static String gatesInShort(Verdict verdict) {
        return verdict.findFirst()
                .map(first -> "out of the ranking: " + first.explanation())
                .orElse("none excludes the span");
    }

    private void cautions() {
        Verdict verdict = ranked.verdict();
        if (verdict.cautionKeys().isEmpty()) {
            return;
        }
        page.gap();
        page.line("Cautions");
        for (Exclusion reason : verdict.waived()) {
            caution(reason.key(), reason.explanation());
        }
        for (Caution caution : verdict.cautions()) {
            caution(caution.key(), caution.explanation());
        }
    }

    private void caution(String key, String sentence) {
        page.hanging(25, "  %-22s %s", key, sentence);
    }

    private void score() {
        Score score = ranked.score();
        page.gap();
        page.line("Score %.1f of 100, %s", score.totalPoints(), ReckoningText.rank(reckoning));
        page.line("  %-16s %20s  %6s  %6s  %7s", "criterion", "quantity", "value", "weight", "points");
        for (Score.Part part : score.parts()) {
            page.line(
                    "  %-16s %20s  %6.2f  %6.2f  %7.1f",
                    part.criterion(), part.quantityText(), part.valueRatio(), part.weightRatio(), part.points());
        }
        ranked.sureness().ifPresent(this::sureness);
    }

    private void sureness(Sureness sure) {
        page.hanging(
                2,
                "What is assumed or uncertain varied: feasible with a chance of %.0f %%; score %.1f to %.1f (10 and 90 %% points); "
                        + "among the top of the ranking with a chance of %.0f %%",
                100 * sure.feasibleRatio(),
                sure.scoreLowPoints(),
                sure.scoreHighPoints(),
                100 * sure.topRatio());
    }
}
