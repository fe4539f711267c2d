package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.program.ProgramConnection;
import org.spanroom.model.program.ProgramTotals;
import org.spanroom.output.JsonObject;
import org.spanroom.pipeline.ProgramRun.ProgramSummary;

/** The account of an annual program as JSON: for the file of the results and for programs that read the screen. */
public final class ProgramAccount {
    private ProgramAccount() {}

    /** Returns the account for the file of the results. */
    static JsonObject of(ProgramSummary summary) {
        return addTo(new JsonObject().text("command", "program"), summary);
    }

    /** Adds the account to an object and returns it. */
    public static JsonObject addTo(JsonObject json, ProgramSummary summary) {
        List<JsonObject> years = new ArrayList<>();
        for (ProgramTotals totals : summary.results().totals()) {
            if (totals.column().isEmpty() && totals.year() >= 0) {
                years.add(year(summary, totals));
            }
        }
        List<ProgramConnection> connections = summary.results().connections();
        return json.text("currency", summary.currency())
                .objects("years", years)
                .number("spans", summary.results().items().size())
                .number("spans_not_chosen", summary.results().reserve().size())
                .number(
                        "reserve",
                        summary.results().reserve().stream()
                                .filter(item -> item.place() > 0)
                                .count())
                .number("connections", connections.size())
                .number(
                        "connections_served",
                        connections.stream().filter(ProgramConnection::isServed).count())
                .number("value_money", summary.value(), 2)
                .number("year_plan_value_money", summary.yearValue(), 2)
                .number("bound_money", summary.boundValue(), 2)
                .number("gap_pct", 100 * summary.gapRatio().orElse(Double.NaN), 2)
                .text("bound_of", "the year model; the calendar may keep less")
                .number("repairs", summary.rounds())
                .number("seed", summary.request().seed())
                .texts("notes", summary.notes())
                .texts("files", summary.files().stream().map(String::valueOf).toList());
    }

    private static JsonObject year(ProgramSummary summary, ProgramTotals totals) {
        int year = totals.year();
        var rules = summary.results().rules().years().get(year);
        var budget = summary.results().budgets().get(year);
        double budgetMoney = summary.results().items().stream()
                        .filter(item -> item.year() == year)
                        .mapToDouble(item -> item.budgetMoney())
                        .sum()
                + summary.results().ducts().stream()
                        .filter(ducts -> ducts.year() == year)
                        .mapToDouble(ducts -> ducts.budgetMoney())
                        .sum();
        return new JsonObject()
                .number("year", year + 1L)
                .text("from", rules.from().toString())
                .text("until", rules.until().toString())
                .number("spans", totals.spans())
                .number("positions", totals.positions())
                .number("expected_positions", totals.expectedPositions(), 1)
                .number("budget_money", budget.money(), 2)
                .number("spent_money", budgetMoney, 2)
                .number("cost_money", totals.costs().money(), 2)
                .number("cost_low_money", totals.costs().range().lowMoney(), 2)
                .number("cost_likely_money", totals.costs().range().likelyMoney(), 2)
                .number("cost_high_money", totals.costs().range().highMoney(), 2)
                .number("crew_hours", budget.crewHours(), 1)
                .number("site_hours", totals.siteHours(), 1);
    }
}
