package org.spanroom.output.report;

import java.util.List;
import org.spanroom.output.explain.ExplanationSection;

/**
 * What the card of a span shows beyond the columns of the results.
 *
 * @param spanId the span's name as in the results
 * @param tree the whole calculation, the very tree that {@code explain} shows
 * @param drawings the cross-section now, after recovery, and with each other choice
 * @param pulls the forces along the span, for each innerduct that comes out and each end that pulls
 * @param money the account line by line
 */
public record SpanDetail(
        String spanId, ExplanationSection tree, List<Drawing> drawings, List<PullCurve> pulls, List<MoneyLine> money) {
    public SpanDetail {
        drawings = List.copyOf(drawings);
        pulls = List.copyOf(pulls);
        money = List.copyOf(money);
    }

    /**
     * One cross-section.
     *
     * @param label what it shows, e.g. {@code now} or {@code 2 of 3 innerducts out (proposed)}
     * @param svg a whole SVG document
     */
    public record Drawing(String label, String svg) {}

    /**
     * Both steady forces along the span as the pull of one innerduct begins.
     *
     * @param innerduct its name
     * @param pullingVault the vault that it comes out at
     * @param isBetterEnd whether this is the end that the run proposes
     * @param atM distances from vault A, in the order of the pull
     * @param pullN tension of the innerduct there
     * @param holdN tension of the cables there
     * @param allowedPullN the steady tension that uses up the least limit on the pull, of innerduct and machine: limits hold at breakaway too
     * @param allowedHoldN the steady tension of all cables together that uses up the limit on the live one; NaN where none is live
     */
    public record PullCurve(
            String innerduct,
            String pullingVault,
            boolean isBetterEnd,
            List<Double> atM,
            List<Double> pullN,
            List<Double> holdN,
            double allowedPullN,
            double allowedHoldN) {
        public PullCurve {
            atM = List.copyOf(atM);
            pullN = List.copyOf(pullN);
            holdN = List.copyOf(holdN);
        }
    }

    /**
     * One line of the account.
     *
     * @param part what the line is for, in words
     * @param place A or B for work at a vault, else empty
     * @param quantity with its unit, in words
     * @param rate with its unit, in words
     * @param amountMoney what it comes to
     * @param source where the rate is from; illustrative rates say so
     */
    public record MoneyLine(
            String part, String place, String quantity, String rate, double amountMoney, String source) {}
}
