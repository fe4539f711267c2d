package org.spanroom.model.program;

import java.util.List;

/**
 * An annual program with everything that is reported of it.
 *
 * @param rules years, crews and days without work
 * @param budgets what each year has
 * @param items the spans in the order of the calendar
 * @param ducts new ducts, by year and section
 * @param connections in the order of their table
 * @param reserve the other eligible spans: first those that can take the place of one that fails, in their order
 * @param totals by year: all spans first, then by each column and value
 * @param spreads of each year; empty where nothing was simulated
 * @param curve what budgets buy; empty where it was not asked for
 * @param prices what conditions cost; empty where they were not asked for
 */
public record ProgramResults(
        CalendarRules rules,
        List<YearBudget> budgets,
        List<ProgramItem> items,
        List<ProgramDucts> ducts,
        List<ProgramConnection> connections,
        List<ReserveItem> reserve,
        List<ProgramTotals> totals,
        List<YearSpread> spreads,
        List<CurvePoint> curve,
        List<PriceItem> prices) {
    public ProgramResults {
        budgets = List.copyOf(budgets);
        items = List.copyOf(items);
        ducts = List.copyOf(ducts);
        connections = List.copyOf(connections);
        reserve = List.copyOf(reserve);
        totals = List.copyOf(totals);
        spreads = List.copyOf(spreads);
        curve = List.copyOf(curve);
        prices = List.copyOf(prices);
    }
}
