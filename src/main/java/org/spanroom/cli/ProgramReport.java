package org.spanroom.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.spanroom.model.Counted;
import org.spanroom.model.program.CurvePoint;
import org.spanroom.model.program.PriceItem;
import org.spanroom.model.program.ProgramConnection;
import org.spanroom.model.program.ProgramDucts;
import org.spanroom.model.program.ProgramItem;
import org.spanroom.model.program.ProgramResults;
import org.spanroom.model.program.ProgramTotals;
import org.spanroom.model.program.ReserveItem;
import org.spanroom.model.program.YearBudget;
import org.spanroom.pipeline.ProgramRun.ProgramSummary;

/** What {@code program} says at its end. */
final class ProgramReport {
    private static final int MOST_SHOWN = 12;

    private final StringBuilder text = new StringBuilder();
    private final ProgramSummary summary;
    private final ProgramResults results;

    private ProgramReport(ProgramSummary summary) {
        this.summary = summary;
        this.results = summary.results();
    }

    static String text(ProgramSummary summary) {
        var report = new ProgramReport(summary);
        report.totals();
        report.years();
        report.byRank();
        report.firstWeeks();
        report.connections();
        report.curve();
        report.prices();
        report.reserve();
        summary.notes().forEach(note -> report.line("%nNote: %s.", Printable.of(note)));
        report.line(
                "%nResults: %s", summary.files().stream().map(String::valueOf).collect(Collectors.joining(", ")));
        report.line("%s", SummaryJson.CAUTION);
        return report.text.toString();
    }

    private void totals() {
        int positions = results.items().stream()
                .mapToInt(item -> item.span().facts().positionsGained())
                .sum();
        line(
                "%n%s in %s add %s. Value of the program: %,.0f %s, which is its positions and connections at the "
                        + "values of the config, not money earned or saved.",
                Counted.of(results.items().size(), "span"),
                Counted.of(results.budgets().size(), "year"),
                Counted.of(positions, "position"),
                summary.value(),
                summary.currency());
        if (summary.gapRatio().isPresent()) {
            line(
                    "No year plan is worth more than %,.0f (bound); gap: %.1f %%. The bound is that of the year model.",
                    summary.boundValue(), 100 * summary.gapRatio().getAsDouble());
        }
        if (summary.rounds() > 0) {
            line(
                    "The calendar shares fewer set-ups than the years could: the year plan, worth %,.0f, was repaired in %s.",
                    summary.yearValue(), Counted.of(summary.rounds(), "round"));
        }
    }

    private void years() {
        line(
                "%n%-4s %-23s %5s %9s %9s %11s %11s %9s %9s  %s",
                "year",
                "from - until",
                "spans",
                "positions",
                "expected",
                "budget",
                "spent",
                "crew hrs",
                "used",
                "low (90 % reach), high (10 % reach)");
        for (ProgramTotals totals : results.totals()) {
            if (totals.column().isEmpty() && totals.year() >= 0) {
                year(totals);
            }
        }
    }

    private void year(ProgramTotals totals) {
        var days = results.rules().years().get(totals.year());
        YearBudget budget = results.budgets().get(totals.year());
        line(
                "%-4d %s - %s %5d %9d %9.1f %11s %,11.0f %,9.0f %,9.0f  %s",
                totals.year() + 1,
                days.from(),
                days.until(),
                totals.spans(),
                totals.positions(),
                totals.expectedPositions(),
                Double.isFinite(budget.money()) ? String.format(Locale.ROOT, "%,.0f", budget.money()) : "no limit",
                spentMoney(totals.year()),
                budget.crewHours(),
                totals.siteHours(),
                results.spreads().stream()
                        .filter(spread -> spread.year() == totals.year())
                        .map(spread ->
                                String.format(Locale.ROOT, "%.0f, %.0f", spread.lowPositions(), spread.highPositions()))
                        .collect(Collectors.joining()));
    }

    private double spentMoney(int year) {
        return results.items().stream()
                        .filter(item -> item.year() == year)
                        .mapToDouble(ProgramItem::budgetMoney)
                        .sum()
                + results.ducts().stream()
                        .filter(ducts -> ducts.year() == year)
                        .mapToDouble(ProgramDucts::budgetMoney)
                        .sum();
    }

    /** What the same money buys if spans are taken by rank. */
    private void byRank() {
        double spent = 0;
        for (int year = 0; year < results.budgets().size(); year++) {
            spent += spentMoney(year);
        }
        int positions = summary.positionsByRank(spent);
        if (positions > 0) {
            line("%nTaken by rank, the same money buys %s.", Counted.of(positions, "position"));
        }
    }

    private void firstWeeks() {
        if (results.items().isEmpty()) {
            return;
        }
        line("%nThe first work, at its cost against the budget (all of it in program.csv):");
        line(
                "%-10s %-10s %-26s %6s %9s %9s  %-10s %s",
                "week", "crew", "span", "hours", "cost", "positions", "apply by", "why");
        for (ProgramItem item :
                results.items().subList(0, Math.min(MOST_SHOWN, results.items().size()))) {
            line(
                    "%-10s %-10s %-26s %6.1f %,9.0f %9d  %-10s %s",
                    item.entry().week(),
                    Printable.of(item.entry().crew()),
                    Printable.of(item.span().facts().spanId()),
                    item.entry().siteHours(),
                    item.budgetMoney(),
                    item.span().facts().positionsGained(),
                    item.entry().applyBy(),
                    Printable.of(item.why()));
        }
        rest(results.items().size(), MOST_SHOWN);
    }

    private void connections() {
        List<ProgramConnection> all = results.connections();
        if (all.isEmpty()) {
            return;
        }
        long served = all.stream().filter(ProgramConnection::isServed).count();
        line("%n%,d of %s served:", served, Counted.of(all.size(), "connection"));
        for (ProgramConnection row : all.subList(0, Math.min(2 * MOST_SHOWN, all.size()))) {
            String name = Printable.of(
                    row.connection().name().isEmpty()
                            ? "line " + row.connection().line()
                            : row.connection().name());
            if (row.isServed()) {
                LocalDate day = row.servedOn().orElseThrow();
                line(
                        day.equals(results.rules().readyOn())
                                ? "%-22s from free positions, today"
                                : "%-22s year %d, on %s",
                        name,
                        row.year().getAsInt() + 1,
                        day);
            } else {
                line(
                        "%-22s not served: %s%s",
                        name,
                        Printable.of(row.whyNot()),
                        row.takes().isEmpty() ? "" : "; " + Printable.of(row.takes()));
            }
        }
        rest(all.size(), 2 * MOST_SHOWN);
    }

    private void curve() {
        if (results.curve().isEmpty()) {
            return;
        }
        line("%nWhat budgets buy (year plans, before the calendar; per position: since the row above):");
        line("%8s %12s %12s %9s %11s %14s", "budget", "money", "spent", "positions", "connections", "per position");
        for (CurvePoint point : results.curve()) {
            line(
                    "%6.0f %% %,12.0f %,12.0f %9d %11d %14s",
                    100 * point.budgetRatio(),
                    point.budgetMoney(),
                    point.spentMoney(),
                    point.positions(),
                    point.connections(),
                    point.marginalMoneyPerPosition().isPresent()
                            ? String.format(
                                    Locale.ROOT,
                                    "%,.0f",
                                    point.marginalMoneyPerPosition().getAsDouble())
                            : "-");
        }
    }

    private void prices() {
        if (results.prices().isEmpty()) {
            return;
        }
        line("%nWhat each condition costs (worth of the program without it, in addition):");
        for (PriceItem price : results.prices()) {
            line(
                    "%-14s %-34s %,11.0f  %+d positions, %+d connections",
                    price.kind(),
                    Printable.of(price.name()),
                    price.valueMoney(),
                    price.positions(),
                    price.connections());
        }
    }

    private void reserve() {
        List<ReserveItem> able =
                results.reserve().stream().filter(item -> item.place() > 0).toList();
        if (!able.isEmpty()) {
            ReserveItem first = able.get(0);
            line(
                    "%nReserve: %s, in the order in which they take the place of a span that fails; first %s.",
                    Counted.of(able.size(), "span"),
                    Printable.of(first.span().facts().spanId()));
            int others = results.reserve().size() - able.size();
            if (others > 0) {
                line(
                        "  reserve.csv lists %s without a place in that order too, with the reason.",
                        Counted.of(others, "eligible span"));
            }
        }
    }

    private void rest(int all, int shown) {
        if (all > shown) {
            line("  and %d more, in the results", all - shown);
        }
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append(System.lineSeparator());
    }
}
