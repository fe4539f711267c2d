package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.spanroom.model.rank.Caution;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.report.Frontier;
import org.spanroom.output.report.ReportCharts;

/** Sums over all spans of a run, and the points of its charts. */
final class ReportTotals {
    /** So many groups are shown; the others are one. */
    private static final int MOST_GROUPS = 24;

    private static final String NOT_RECORDED = "(not recorded)";
    private static final String OTHERS = "(others)";

    private final SpanCells cells;
    private final String groupColumn;
    private final Map<String, Long> excluded = new TreeMap<>();
    private final Map<String, Sum> byGroup = new TreeMap<>();
    private final List<Frontier.Point> points = new ArrayList<>();
    private long spans;
    private long ranked;
    private long positionsGained;
    private long doubtful;
    private long tightBends;

    private static final class Sum {
        private long spans;
        private long positions;
        private double money;
    }

    /** @param groupColumn the column that sums are made by */
    ReportTotals(SpanCells cells, String groupColumn) {
        this.cells = cells;
        this.groupColumn = groupColumn;
    }

    /**
     * Adds a span.
     *
     * @param number its row in the page; -1 where the page does not show it
     */
    void add(RecordedSpans.Row row, int number) {
        spans++;
        if (Double.isNaN(cells.number(row, "rank"))) {
            excluded.merge(cells.text(row, "exclusion"), 1L, Long::sum);
            return;
        }
        ranked++;
        long gained = (long) cells.numberOr0(row, "positions_gained");
        double money = cells.number(row, "recovery_likely_money");
        double shownMoney = Double.isNaN(money) ? cells.numberOr0(row, "recovery_money") : money;
        positionsGained += gained;
        List<String> cautions = cells.items(row, "cautions");
        doubtful += cautions.contains(Caution.PULL_DOUBTFUL) ? 1 : 0;
        tightBends += cautions.contains(Caution.INNERDUCT_RADIUS) ? 1 : 0;
        String group = cells.text(row, groupColumn);
        Sum sum = byGroup.computeIfAbsent(group.isEmpty() ? NOT_RECORDED : group, none -> new Sum());
        sum.spans++;
        sum.positions += gained;
        sum.money += shownMoney;
        if (number >= 0) {
            points.add(new Frontier.Point(shownMoney, gained, number));
        }
    }

    long spans() {
        return spans;
    }

    long ranked() {
        return ranked;
    }

    long positionsGained() {
        return positionsGained;
    }

    /** Returns how many ranked spans have a pull that only good lubrication lets pass. */
    long doubtful() {
        return doubtful;
    }

    long tightBends() {
        return tightBends;
    }

    List<Frontier.Point> points() {
        return points;
    }

    /** Returns the column that sums are made by; "" where the run has no such column. */
    String groupColumn() {
        return cells.has(groupColumn) ? groupColumn : "";
    }

    /** Returns the sums, those that gain most first. */
    List<ReportCharts.Group> groups() {
        if (groupColumn().isEmpty()) {
            return List.of();
        }
        List<ReportCharts.Group> all = byGroup.entrySet().stream()
                .map(entry -> new ReportCharts.Group(
                        entry.getKey(), entry.getValue().positions, entry.getValue().spans, entry.getValue().money))
                .sorted(Comparator.comparingLong((ReportCharts.Group group) -> -group.positions())
                        .thenComparing(ReportCharts.Group::name))
                .toList();
        if (all.size() <= MOST_GROUPS) {
            return all;
        }
        var shown = new ArrayList<>(all.subList(0, MOST_GROUPS));
        var rest = all.subList(MOST_GROUPS, all.size());
        shown.add(new ReportCharts.Group(
                OTHERS,
                rest.stream().mapToLong(ReportCharts.Group::positions).sum(),
                rest.stream().mapToLong(ReportCharts.Group::spans).sum(),
                rest.stream().mapToDouble(ReportCharts.Group::recoveryMoney).sum()));
        return shown;
    }

    /**
     * Returns how many spans each first reason excludes, the most first.
     *
     * @param words a reason in words
     */
    List<ReportCharts.Reason> exclusions(UnaryOperator<String> words) {
        return excluded.entrySet().stream()
                .map(entry -> new ReportCharts.Reason(entry.getKey(), entry.getValue(), words.apply(entry.getKey())))
                .sorted(Comparator.comparingLong((ReportCharts.Reason reason) -> -reason.spans())
                        .thenComparing(ReportCharts.Reason::key))
                .toList();
    }
}
