package org.spanroom.output.columns;

import static org.spanroom.output.columns.EffortColumns.effort;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.spanroom.model.effort.BuildMethod;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.NewBuild;
import org.spanroom.model.effort.Surface;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.SpanOffer;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of the spans about the cost of recovery and of new build; empty where no innerduct comes out. */
public final class MoneyColumns {
    public static final Column<RankedSpan> RECOVERY_MONEY = Column.real(
            "recovery_money",
            "recov_mon",
            2,
            CellRange.AMOUNT,
            "Cost of recovery, all items, with all rates at their values.",
            effort(Effort::recoveryMoney));

    public static final Column<RankedSpan> NEW_BUILD_MONEY = Column.real(
            "build_money",
            "bld_money",
            2,
            CellRange.AMOUNT,
            "Cost of new build for the positions needed, with all rates at their values.",
            effort(Effort::newBuildMoney));

    private static final Column<RankedSpan> RECOVERY_LOW =
            low("recovery_low_money", "recov_low", ranges -> ranges.recovery().lowMoney());
    private static final Column<RankedSpan> RECOVERY_LIKELY = likely(
            "recovery_likely_money", "recov_like", ranges -> ranges.recovery().likelyMoney());
    private static final Column<RankedSpan> RECOVERY_HIGH = high(
            "recovery_high_money", "recov_high", ranges -> ranges.recovery().highMoney());
    private static final Column<RankedSpan> NEW_BUILD_LOW =
            low("build_low_money", "bld_low", ranges -> ranges.newBuild().lowMoney());
    private static final Column<RankedSpan> NEW_BUILD_LIKELY =
            likely("build_likely_money", "bld_like", ranges -> ranges.newBuild().likelyMoney());
    private static final Column<RankedSpan> NEW_BUILD_HIGH =
            high("build_high_money", "bld_high", ranges -> ranges.newBuild().highMoney());
    private static final Column<RankedSpan> SAVING_LOW =
            low("saving_low_money", "sav_low", ranges -> ranges.saving().lowMoney());
    private static final Column<RankedSpan> SAVING_LIKELY =
            likely("saving_likely_money", "sav_like", ranges -> ranges.saving().likelyMoney());
    private static final Column<RankedSpan> SAVING_HIGH =
            high("saving_high_money", "sav_high", ranges -> ranges.saving().highMoney());

    /** Those that come from draws of the rates, in which no scoring has a part; empty for spans without a rank. */
    public static final List<Column<RankedSpan>> DRAWN = List.of(
            RECOVERY_LOW,
            RECOVERY_LIKELY,
            RECOVERY_HIGH,
            NEW_BUILD_LOW,
            NEW_BUILD_LIKELY,
            NEW_BUILD_HIGH,
            SAVING_LOW,
            SAVING_LIKELY,
            SAVING_HIGH);

    private MoneyColumns() {}

    static List<Column<RankedSpan>> all() {
        var columns = new ArrayList<>(recovery());
        columns.addAll(newBuild());
        columns.addAll(newDuct());
        columns.addAll(saving());
        columns.addAll(moneyPerCable());
        return columns;
    }

    private static List<Column<RankedSpan>> recovery() {
        return List.of(RECOVERY_MONEY, RECOVERY_LOW, RECOVERY_LIKELY, RECOVERY_HIGH);
    }

    private static List<Column<RankedSpan>> newBuild() {
        return List.of(
                Column.text(
                        "build_method",
                        "bld_method",
                        CellRange.oneOf(Stream.of(BuildMethod.values()).map(BuildMethod::key)),
                        "The cheapest way to lay new ducts on the same path.",
                        build(build -> build.method().key())),
                Column.text(
                        "build_surface",
                        "bld_surf",
                        CellRange.oneOf(Stream.of(Surface.values()).map(Surface::key)),
                        "Surface that they would be laid in: roadway, sidewalk or verge.",
                        effort(effort -> effort.quantities().surface().key())),
                Column.flag(
                        "surface_assumed",
                        "surf_assum",
                        "Whether the surface is assumed because the recorded one is none of these.",
                        effort(effort -> effort.quantities().surfaceAssumed())),
                Column.integer(
                        "positions_needed",
                        "needed",
                        CellRange.COUNT,
                        "Positions that new build is priced for: those gained, up to room.demand_positions.",
                        effort(effort -> effort.quantities().positionsNeeded())),
                Column.integer(
                        "build_ducts",
                        "bld_ducts",
                        CellRange.COUNT,
                        "New ducts for the positions needed.",
                        build(NewBuild::ducts)),
                NEW_BUILD_MONEY,
                NEW_BUILD_LOW,
                NEW_BUILD_LIKELY,
                NEW_BUILD_HIGH,
                Column.real(
                        "trench_avoided_m",
                        "trench_m",
                        1,
                        CellRange.AMOUNT,
                        "Open trench avoided.",
                        build(NewBuild::trenchM)),
                Column.real(
                        "bore_avoided_m", "bore_m", 1, CellRange.AMOUNT, "Boring avoided.", build(NewBuild::boreM)));
    }

    /** Of one new duct, whatever recovery gains: what programs of work start from. */
    private static List<Column<RankedSpan>> newDuct() {
        return List.of(
                Column.integer(
                        "new_duct_positions",
                        "new_pos",
                        CellRange.COUNT,
                        "Cables that one new duct on the same path takes.",
                        offer(offer -> offer.newDuct().positions())),
                Column.real(
                        "new_duct_money",
                        "new_money",
                        2,
                        CellRange.AMOUNT,
                        "Cost of one new duct on the same path, with its trench or bore, sleeves, permits and engineering, "
                                + "whatever recovery gains.",
                        offer(offer -> offer.newDuct().firstMoney())),
                Column.real(
                        "further_duct_money",
                        "new_more",
                        2,
                        CellRange.AMOUNT,
                        "Cost of each additional new duct in the same trench or bore.",
                        offer(offer -> offer.newDuct().furtherMoney())));
    }

    private static List<Column<RankedSpan>> saving() {
        return List.of(
                Column.real(
                        "saving_money",
                        "saving",
                        2,
                        CellRange.NUMBER,
                        "Cost of new build minus cost of recovery, with all rates at their values; the score "
                                + "uses it per unit of money spent.",
                        effort(Effort::savingMoney)),
                SAVING_LOW,
                SAVING_LIKELY,
                SAVING_HIGH,
                Column.real(
                        "saving_ratio",
                        "saving_rat",
                        3,
                        CellRange.NUMBER,
                        "Money saved for each unit of money spent on recovery.",
                        effort(Effort::savingRatio)));
    }

    private static List<Column<RankedSpan>> moneyPerCable() {
        return List.of(
                Column.real(
                        "recovery_money_per_cable",
                        "rec_cable",
                        2,
                        CellRange.NOT_NEGATIVE,
                        "Cost of recovery for each position gained.",
                        effort(Effort::recoveryMoneyPerCable)),
                Column.real(
                        "build_money_per_cable",
                        "bld_cable",
                        2,
                        CellRange.NOT_NEGATIVE,
                        "Cost of new build for each position needed.",
                        effort(Effort::newBuildMoneyPerCable)),
                Column.real(
                        "recovery_money_per_cable_m",
                        "rec_cab_m",
                        2,
                        CellRange.NOT_NEGATIVE,
                        "Cost of recovery per meter of position gained.",
                        effort(Effort::recoveryMoneyPerCableM)),
                Column.real(
                        "build_money_per_cable_m",
                        "bld_cab_m",
                        2,
                        CellRange.NOT_NEGATIVE,
                        "Cost of new build per meter of position needed.",
                        effort(Effort::newBuildMoneyPerCableM)));
    }

    private static Function<RankedSpan, Object> build(Function<NewBuild, Object> cell) {
        return effort(effort -> cell.apply(effort.newBuild()));
    }

    private static Column<RankedSpan> low(String name, String shortName, ToDoubleFunction<MoneyRanges> cell) {
        String meaning = "Its low value: the lower configured percentile of the joint draws of the rates.";
        return Column.real(name, shortName, 2, drawn(name), meaning, money(cell));
    }

    private static Column<RankedSpan> likely(String name, String shortName, ToDoubleFunction<MoneyRanges> cell) {
        String meaning = "Its likely value: the median of the joint draws of the rates.";
        return Column.real(name, shortName, 2, drawn(name), meaning, money(cell));
    }

    private static Column<RankedSpan> high(String name, String shortName, ToDoubleFunction<MoneyRanges> cell) {
        String meaning = "Its high value: the upper configured percentile of the joint draws of the rates.";
        return Column.real(name, shortName, 2, drawn(name), meaning, money(cell));
    }

    /** Only a saving can be below zero. */
    private static CellRange drawn(String name) {
        return name.startsWith("saving") ? CellRange.NUMBER : CellRange.AMOUNT;
    }

    private static Function<RankedSpan, Object> money(ToDoubleFunction<MoneyRanges> cell) {
        return row -> row.money().map(cell::applyAsDouble);
    }

    private static Function<RankedSpan, Object> offer(Function<SpanOffer, Object> cell) {
        return row -> row.offer().map(cell);
    }
}
