package org.spanroom.output.columns;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.spanroom.model.program.CurvePoint;
import org.spanroom.model.program.PriceItem;
import org.spanroom.model.program.ProgramTotals;
import org.spanroom.model.program.YearSpread;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** The columns of the figures of an annual program: totals, what budgets buy, and what conditions cost. */
public final class AnnualFigureColumns {
    /** One row for each year and group. */
    public static final Table<TotalsRow> TOTALS = Table.plain(
            "totals",
            "Sums by year: one row for all spans of the year, then one for each value in each column that totals were asked for.",
            Stream.of(
                            which(),
                            AnnualColumns.<TotalsRow>costs(
                                    row -> row.totals().costs(),
                                    "of the spans; in rows of all spans that of new ducts too"),
                            amounts(),
                            spread())
                    .flatMap(List::stream)
                    .toList());

    /** One row for each budget. */
    public static final Table<CurvePoint> CURVE = Table.plain(
            "curve",
            "One row for each budget that was tried: what it buys. No rows where that was not asked for.",
            List.of(
                    Column.real(
                            "budget_pct",
                            "budget_pct",
                            1,
                            "The budget, as a share of that of the program.",
                            point -> 100 * point.budgetRatio()),
                    Column.real(
                            "budget_money", "budget", 2, "The budget of all years together.", CurvePoint::budgetMoney),
                    Column.real("spent_money", "spent", 2, "What of it the year plan spends.", CurvePoint::spentMoney),
                    Column.integer("positions", "positions", "Positions that its spans add.", CurvePoint::positions),
                    Column.integer(
                            "connections", "connects", "How many connections it serves.", CurvePoint::connections),
                    Column.real("value_money", "value", 2, "What the year plan is worth.", CurvePoint::valueMoney),
                    Column.real(
                            "bound_money",
                            "bound",
                            2,
                            "What no plan of that budget can be worth more than; empty where that was not calculated.",
                            CurvePoint::boundMoney),
                    Column.real(
                            "marginal_money_per_position",
                            "marginal",
                            2,
                            "Additional money for each additional position, from the row before; empty where none is added.",
                            CurvePoint::marginalMoneyPerPosition)));

    /** One row for each condition. */
    public static final Table<PriceItem> PRICES = Table.plain(
            "prices",
            "One row for each condition that was tried: what the program would be without it. Written where conditions were tried.",
            List.of(
                    Column.text(
                            "kind",
                            "kind",
                            "Kind of the condition: must, must_not, stop_window, change_freeze, needed_by, crew or district.",
                            PriceItem::kind),
                    Column.text("name", "name", "Name of the condition.", PriceItem::name),
                    Column.real(
                            "value_money",
                            "value",
                            2,
                            "What the program would be worth in addition without it.",
                            PriceItem::valueMoney),
                    Column.integer(
                            "positions",
                            "positions",
                            "Positions that it would add in addition; below 0 where it would add fewer.",
                            PriceItem::positions),
                    Column.integer(
                            "connections",
                            "connects",
                            "Connections that it would serve in addition; below 0 where it would serve fewer.",
                            PriceItem::connections),
                    Column.real(
                            "spent_money",
                            "spent",
                            2,
                            "Money that it would spend in addition; below 0 where it would spend less.",
                            PriceItem::spentMoney)));

    private AnnualFigureColumns() {}

    /**
     * The sums of a year or of a group in it.
     *
     * @param spread how certain the positions are; empty for a group, for all years, and where nothing was simulated
     */
    public record TotalsRow(ProgramTotals totals, Optional<YearSpread> spread) {
        /** Returns the sums with the spread of their year. */
        public static TotalsRow of(ProgramTotals totals, List<YearSpread> spreads) {
            return new TotalsRow(
                    totals,
                    spreads.stream()
                            .filter(spread -> totals.column().isEmpty() && spread.year() == totals.year())
                            .findFirst());
        }
    }

    private static List<Column<TotalsRow>> which() {
        return List.of(
                Column.integer(
                        "year",
                        "year",
                        "Year of the program, from 1; empty for all years.",
                        row -> row.totals().year() < 0
                                ? Optional.empty()
                                : Optional.of(row.totals().year() + 1)),
                Column.text(
                        "column",
                        "column",
                        "Name of the column by which spans are grouped; empty for all spans.",
                        row -> row.totals().column()),
                Column.text(
                        "value",
                        "value",
                        "The value in it.",
                        row -> row.totals().group()),
                Column.integer(
                        "spans",
                        "spans",
                        "How many spans are recovered.",
                        row -> row.totals().spans()),
                Column.integer(
                        "positions",
                        "positions",
                        "Positions that they add.",
                        row -> row.totals().positions()),
                Column.real(
                        "expected_positions",
                        "expect_pos",
                        1,
                        "The same, each span weighted by the chance that its recovery works.",
                        row -> row.totals().expectedPositions()));
    }

    private static List<Column<TotalsRow>> amounts() {
        return List.of(
                amount(
                        "site_hours",
                        "site_hours",
                        2,
                        "Hours on site, set-ups shared as in the calendar.",
                        ProgramTotals::siteHours),
                amount(
                        "innerduct_out_kg",
                        "out_kg",
                        1,
                        "Mass of the innerduct that comes out.",
                        ProgramTotals::innerductKg),
                amount(
                        "co2e_ice_kg",
                        "co2_ice_kg",
                        1,
                        "Emissions of the new-build materials avoided minus those of the sleeves placed, by ICE v2.0; surface and encasement once for all spans of a section in this row.",
                        ProgramTotals::co2eKg),
                amount(
                        "trench_avoided_m",
                        "trench_m",
                        1,
                        "Open trench avoided; one trench serves all spans of a section in this row.",
                        ProgramTotals::trenchM),
                amount("bore_avoided_m", "bore_m", 1, "Boring avoided, the same way.", ProgramTotals::boreM));
    }

    private static List<Column<TotalsRow>> spread() {
        return List.of(
                positions("low_positions", "low_pos", "Positions that 9 of 10 draws reach", YearSpread::lowPositions),
                positions(
                        "likely_positions",
                        "likely_pos",
                        "Positions that half of the draws reach",
                        YearSpread::likelyPositions),
                positions(
                        "high_positions",
                        "high_pos",
                        "Positions that 1 of 10 draws reaches",
                        YearSpread::highPositions));
    }

    private static Column<TotalsRow> amount(
            String name, String shortName, int decimals, String meaning, ToDoubleFunction<ProgramTotals> part) {
        return Column.real(name, shortName, decimals, meaning, row -> part.applyAsDouble(row.totals()));
    }

    private static Column<TotalsRow> positions(
            String name, String shortName, String meaning, ToDoubleFunction<YearSpread> part) {
        return Column.real(
                name,
                shortName,
                1,
                meaning + "; only in rows of all spans of a year, where that was simulated.",
                row -> row.spread().map(spread -> part.applyAsDouble(spread)));
    }
}
