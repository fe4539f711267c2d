package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.output.report.PayloadTable;
import org.spanroom.output.report.ReportCharts;

/**
 * What is most uncertain. The share of an unknown is the sum of what the field checks of it are expected to change, over the sum of all field
 * checks: it says where measuring helps most. The spread of money is how far its low and its high value are from the likely one.
 */
final class ReportUncertain {
    private static final int CHECKS = 3;

    private final PayloadTable<?> checks;
    private final MoneyTotals money;

    ReportUncertain(PayloadTable<?> checks, MoneyTotals money) {
        this.checks = checks;
        this.money = money;
    }

    /** Returns the shares of the unknowns, the largest first; none where no field check is listed. */
    List<ReportCharts.Share> shares() {
        Map<String, Double> changes = new TreeMap<>();
        double all = 0;
        for (int row = 0; row < checks.rows(); row++) {
            double change = number(row, "expected_change_pct");
            if (change > 0) {
                changes.merge(text(row, "unknown"), change, Double::sum);
                all += change;
            }
        }
        double sum = all;
        return changes.entrySet().stream()
                .map(entry -> new ReportCharts.Share(entry.getKey(), 100 * entry.getValue() / sum))
                .sorted(Comparator.comparingDouble((ReportCharts.Share share) -> -share.sharePercent())
                        .thenComparing(ReportCharts.Share::what))
                .toList();
    }

    /** Returns the spreads of the sums of money; none where nothing was simulated. */
    List<ReportCharts.Spread> spreads() {
        var spreads = new ArrayList<ReportCharts.Spread>();
        if (money.ranges().isPresent()) {
            MoneyRanges ranges = money.ranges().get();
            add(spreads, "recovery cost", ranges.recovery());
            add(spreads, "new build", ranges.newBuild());
            add(spreads, "saving", ranges.saving());
        }
        return spreads;
    }

    private static void add(List<ReportCharts.Spread> spreads, String what, MoneyRange range) {
        double likely = range.likelyMoney();
        if (likely > 0) {
            spreads.add(new ReportCharts.Spread(
                    what, 100 * (range.lowMoney() / likely - 1), 100 * (range.highMoney() / likely - 1)));
        }
    }

    /** Returns sentences: what is most uncertain, and what to measure first. */
    List<String> sentences() {
        var sentences = new ArrayList<String>();
        for (ReportCharts.Spread spread : spreads()) {
            sentences.add(String.format(
                    Locale.ROOT,
                    "The sum of %s lies between %.0f %% below and %.0f %% above its likely value in most draws of"
                            + " the rates.",
                    spread.what(),
                    Math.abs(spread.lowPercent()),
                    spread.highPercent()));
        }
        List<ReportCharts.Share> shares = shares();
        if (!shares.isEmpty()) {
            sentences.add("For the order at the top, " + shares.get(0).what() + " is the largest unknown: "
                    + ReportWords.percent(shares.get(0).sharePercent())
                    + " of what the listed field checks may change.");
        }
        for (int row = 0; row < Math.min(CHECKS, checks.rows()); row++) {
            sentences.add("Measure first at vault " + text(row, "vault") + ", duct " + text(row, "duct") + ": "
                    + ReportWords.sentence(text(row, "look_at")));
        }
        return sentences;
    }

    private String text(int row, String column) {
        return checks.text(row, checks.place(column));
    }

    private double number(int row, String column) {
        return checks.number(row, checks.place(column));
    }
}
