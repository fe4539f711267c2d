package org.spanroom.output.columns;

import java.util.List;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.Way;
import org.spanroom.model.program.WayStep;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of what {@code path} finds: one row for each way, and one for each section on it. */
public final class PathColumns {
    /** One row for each way. */
    public static final Table<WayRow> PATHS = Table.plain(
            "paths",
            "One row for each way that was found, the best first.",
            List.of(
                    Column.integer("way", "way", "Number of the way; 1 is the best for the objective.", WayRow::way),
                    Column.text(
                            "vault_from",
                            "vault_from",
                            "Vault where it begins.",
                            row -> row.network().vaultId(row.first().from())),
                    Column.text(
                            "vault_to",
                            "vault_to",
                            "Vault where it ends.",
                            row -> row.network().vaultId(row.last().to())),
                    Column.integer(
                            "cables",
                            "cables",
                            "Cables that go together.",
                            row -> row.found().cables()),
                    Column.real(
                            "length_m",
                            "length_m",
                            3,
                            "Length.",
                            row -> row.found().lengthM()),
                    Column.integer(
                            "sections",
                            "sections",
                            "How many sections it passes.",
                            row -> row.found().steps().size()),
                    Column.integer(
                            "sections_free",
                            "sect_free",
                            "Sections where it uses positions that are free today.",
                            count(WayStep.Action.FREE)),
                    Column.integer(
                            "sections_recover",
                            "sect_recov",
                            "Sections where a duct is recovered.",
                            count(WayStep.Action.RECOVER)),
                    Column.integer(
                            "sections_build",
                            "sect_build",
                            "Sections where a new duct is built.",
                            count(WayStep.Action.BUILD)),
                    Column.real(
                            "cost_money",
                            "cost_money",
                            2,
                            "Cost of all recovery and new build on it, with all rates at their values.",
                            row -> row.found().costs().money()),
                    cost(
                            "cost_low_money",
                            "cost_low",
                            "Its low value: the sum of the low values of its sections.",
                            MoneyRange::lowMoney),
                    cost("cost_likely_money", "cost_like", "Its likely value, the same way.", MoneyRange::likelyMoney),
                    cost("cost_high_money", "cost_high", "Its high value, the same way.", MoneyRange::highMoney),
                    Column.real(
                            "site_hours",
                            "site_hours",
                            2,
                            "Hours on site for recovery, each span by itself; what a shared vault saves is not deducted.",
                            row -> row.found().siteHours()),
                    Column.integer(
                            "lead_days",
                            "lead_days",
                            "Days until the permits of all its sections are issued, if all are applied for on the run date.",
                            row -> row.found().leadDays()),
                    Column.text(
                            "earliest_day",
                            "earliest",
                            "First day on which the last of its work can begin: permits are issued and no embargo applies.",
                            row -> row.found().earliest(row.network().onDate()).toString()),
                    Column.real(
                            "feasible_chance_pct",
                            "feas_pct",
                            1,
                            "Chance that every recovery on it works: the share of the first 64 samples of the simulation in which all "
                                    + "do; empty where that was not simulated.",
                            row -> row.found().feasibleRatio(row.network().samples()).stream()
                                    .map(ratio -> 100 * ratio)
                                    .boxed()
                                    .findFirst()),
                    Column.text(
                            "binding_section",
                            "binding",
                            "Section in whose widest duct the fewest cables can go together without new build.",
                            row -> row.found().binding().section().id()),
                    Column.integer(
                            "binding_positions",
                            "bind_pos",
                            "How many cables can go together there.",
                            row -> row.found().binding().section().widthPositions())));

    /** One row for each section on a way. */
    public static final Table<StepRow> SECTIONS = Table.layer(
            "path_sections",
            "One row for each section on each way, in the order of the way.",
            GeometryKind.LINE,
            row -> row.step()
                    .section()
                    .lonLat()
                    .map(line -> Shape.line(row.step().forward() ? line : line.reversed()))
                    .orElse(Shape.EMPTY),
            List.of(
                    Column.integer("way", "way", "Number of the way, as in paths.", StepRow::way),
                    Column.integer("place", "place", "Place of the section on the way, from 1.", StepRow::place),
                    Column.text(
                            "section_id",
                            "section_id",
                            "Name of the section.",
                            row -> row.step().section().id()),
                    Column.text(
                            "vault_from",
                            "vault_from",
                            "Vault where the way enters it.",
                            row -> row.network().vaultId(row.step().from())),
                    Column.text(
                            "vault_to",
                            "vault_to",
                            "Vault where the way leaves it.",
                            row -> row.network().vaultId(row.step().to())),
                    Column.real(
                            "length_m",
                            "length_m",
                            3,
                            "Length of the section.",
                            row -> row.step().section().lengthM()),
                    Column.text(
                            "action",
                            "action",
                            "free: positions that are free today are used; recover: the duct is recovered first; build: a new duct is built.",
                            row -> row.step().action().key()),
                    Column.text(
                            "span_id",
                            "span_id",
                            "Span whose duct takes the cables; empty for a new duct.",
                            duct(DuctOffer::spanId)),
                    Column.integer(
                            "rank",
                            "rank",
                            "Rank of the span in the run.",
                            row -> row.step().duct().map(DuctOffer::rank).orElse(OptionalInt.empty())),
                    Column.integer(
                            "positions_now", "pos_now", "Positions of the duct today.", duct(DuctOffer::positionsNow)),
                    Column.integer(
                            "positions_after",
                            "pos_after",
                            "Its positions once recovered; of a new duct, the positions that it has.",
                            row -> row.step()
                                    .duct()
                                    .map(DuctOffer::positionsAfter)
                                    .orElseGet(
                                            () -> row.step().section().newDuct().positions())),
                    Column.integer(
                            "widest_positions",
                            "widest_pos",
                            "Cables that can go together in the widest duct of the section, without new build.",
                            row -> row.step().section().widthPositions()),
                    Column.flag(
                            "binding", "binding", "Whether it is the binding section of the way.", StepRow::binding),
                    Column.real(
                            "cost_money",
                            "cost_money",
                            2,
                            "Cost, with all rates at their values.",
                            row -> row.step().costs().money()),
                    stepCost("cost_low_money", "cost_low", "Its low value.", MoneyRange::lowMoney),
                    stepCost("cost_likely_money", "cost_like", "Its likely value.", MoneyRange::likelyMoney),
                    stepCost("cost_high_money", "cost_high", "Its high value.", MoneyRange::highMoney),
                    Column.real(
                            "site_hours",
                            "site_hours",
                            2,
                            "Hours on site for recovery.",
                            row -> row.step().siteHours()),
                    Column.integer(
                            "lead_days",
                            "lead_days",
                            "Days until its permits are issued.",
                            row -> row.step().leadDays()),
                    Column.text(
                            "earliest_day",
                            "earliest",
                            "First day on which its work can begin.",
                            row -> row.step().earliest(row.network().onDate()).toString())));

    private PathColumns() {}

    /** A way and its number. */
    public record WayRow(int way, Way found, DuctNetwork network) {
        WayStep first() {
            return found.steps().get(0);
        }

        WayStep last() {
            return found.steps().get(found.steps().size() - 1);
        }
    }

    /** A section on a way, and its place there. */
    public record StepRow(int way, int place, WayStep step, boolean binding, DuctNetwork network) {}

    private static Function<WayRow, Object> count(WayStep.Action action) {
        return row -> row.found().count(action);
    }

    private static Column<WayRow> cost(
            String name, String shortName, String meaning, ToDoubleFunction<MoneyRange> part) {
        return Column.real(
                name,
                shortName,
                2,
                meaning,
                row -> part.applyAsDouble(row.found().costs().range()));
    }

    private static Column<StepRow> stepCost(
            String name, String shortName, String meaning, ToDoubleFunction<MoneyRange> part) {
        return Column.real(
                name,
                shortName,
                2,
                meaning,
                row -> part.applyAsDouble(row.step().costs().range()));
    }

    private static Function<StepRow, Object> duct(Function<DuctOffer, Object> cell) {
        return row -> row.step().duct().map(cell);
    }
}
