package org.spanroom.output.columns;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.spanroom.model.program.ReserveItem;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** The columns of the eligible spans that an annual program leaves out. */
public final class ReserveColumns {
    /** By which an earlier program is read back. */
    public static final String PLACE = "place";

    public static final String WHY_NOT = "why_not";

    /** One row for each eligible span that is left out. */
    public static final Table<Row> RESERVE = Table.plain(
            "reserve",
            "One row for each eligible span that is not in the program: first those that can take the place of a span that fails, in their order.",
            List.of(
                    Column.integer(
                            PLACE,
                            "place",
                            "Place in the order in which eligible spans take the place of a span that fails, from 1; empty for one that cannot.",
                            row -> row.item().place() > 0
                                    ? Optional.of(row.item().place())
                                    : Optional.empty()),
                    Column.text(
                            AnnualColumns.SPAN_ID,
                            "span_id",
                            "Name of the span.",
                            row -> row.item().span().facts().spanId()),
                    Column.integer(
                            "rank",
                            "rank",
                            "Rank of the span in the run; empty for an excluded one.",
                            row -> row.item().span().facts().rank()),
                    Column.text(
                            AnnualColumns.SECTION,
                            "section",
                            "Name of its section.",
                            row -> row.item().sectionId()),
                    Column.integer(
                            "positions",
                            "positions",
                            "Positions that its recovery would add.",
                            row -> row.item().span().facts().positionsGained()),
                    Column.real(
                            "budget_money",
                            "budget",
                            2,
                            "Its cost as it counts against the budget, done alone.",
                            row -> row.item().span().budgetMoney()),
                    Column.real(
                            "worth_money",
                            "worth",
                            2,
                            "What recovering it is worth by itself, in the first year; 0 where only a connection or a must makes it "
                                    + "worth anything.",
                            row -> row.item().span().worthMoney()),
                    Column.real(
                            "chance_pct",
                            "chance_pct",
                            1,
                            "Chance that its recovery works: the share of the first 64 samples of the simulation in which it does; empty "
                                    + "where that was not simulated.",
                            row -> AnnualColumns.percent(row.chanceRatio())),
                    Column.real(
                            "chosen_chance_pct",
                            "chosen_pct",
                            1,
                            "Share of the draws of the run in which it is in the program; empty where that was not calculated.",
                            row -> AnnualColumns.percent(row.item().chosenRatio())),
                    Column.text(
                            WHY_NOT,
                            "why_not",
                            "Why it is not in the program.",
                            row -> row.item().whyNot())));

    private ReserveColumns() {}

    /**
     * An eligible span that is left out.
     *
     * @param samples how many samples the masks of draws have; 0 where nothing was simulated
     */
    public record Row(ReserveItem item, int samples) {
        private OptionalDouble chanceRatio() {
            OptionalLong draws = item.span().recovery().feasibleDraws();
            if (samples == 0 || draws.isEmpty()) {
                return OptionalDouble.empty();
            }
            int counted = Math.min(samples, Long.SIZE);
            long all = counted == Long.SIZE ? -1L : (1L << counted) - 1;
            return OptionalDouble.of(Long.bitCount(draws.getAsLong() & all) / (double) counted);
        }
    }
}
