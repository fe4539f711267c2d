package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.rank.UncertaintySettings;
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
    private final UncertaintySettings settings;

    ReportUncertain(PayloadTable<?> checks, MoneyTotals money, UncertaintySettings settings) {
        this.checks = checks;
        this.settings = settings;
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
                    "The sum of %s over all candidates lies between %.0f %% below and %.0f %% above its likely value"
                            + " in %s of the draws of the rates.",
                    spread.what(),
                    Math.abs(spread.lowPercent()),
                    spread.highPercent(),
                    ReportWords.rangeShare(settings)));
        }
        List<ReportCharts.Share> shares = shares();
        if (!shares.isEmpty()) {
            sentences.add("Which spans belong at the top depends most on "
                    + words(shares.get(0).what())
                    + ": it has " + ReportWords.percent(shares.get(0).sharePercent())
                    + " of the change that all listed field checks are expected to make.");
        }
        firstChecks()
                .forEach((what, where) -> sentences.add("Measure first at " + String.join(", ", where) + ": " + what));
        return sentences;
    }

    /** Returns where to go first by what to do there: crews that do the same at several vaults read it once. */
    private Map<String, List<String>> firstChecks() {
        Map<String, List<String>> places = new LinkedHashMap<>();
        for (int row = 0; row < Math.min(CHECKS, checks.rows()); row++) {
            String what = text(row, "look_at");
            String sentence = what.isEmpty() ? "" : what.substring(0, 1).toLowerCase(Locale.ROOT) + what.substring(1);
            places.computeIfAbsent(sentence, none -> new ArrayList<>())
                    .add("vault " + text(row, "vault") + " (duct " + text(row, "duct") + ")");
        }
        return places;
    }

    private static String words(String unknown) {
        return unknown.replace('_', ' ');
    }

    private String text(int row, String column) {
        return checks.text(row, checks.place(column));
    }

    private double number(int row, String column) {
        return checks.number(row, checks.place(column));
    }
}
