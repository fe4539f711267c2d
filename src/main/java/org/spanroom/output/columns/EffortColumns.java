package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.effort.Amounts;
import org.spanroom.model.effort.CostItem;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.EffortStep;
import org.spanroom.model.effort.MaterialFlow;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.NewBuild;
import org.spanroom.model.effort.WorkTime;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.Column;

/** The columns of the spans about hours, money, material and new build; empty where nothing comes out. */
public final class EffortColumns {
    public static final Column<RankedSpan> RECOVERY_MONEY = Column.real(
            "recovery_money",
            "recov_mon",
            2,
            "Cost of recovery, all items, with all rates at their values.",
            effort(Effort::recoveryMoney));

    public static final Column<RankedSpan> NEW_BUILD_MONEY = Column.real(
            "build_money",
            "bld_money",
            2,
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

    /** Those that go by drawings of the rates, which no scoring has a part in; empty for spans without a rank. */
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

    private EffortColumns() {}

    static List<Column<RankedSpan>> all() {
        var columns = new ArrayList<Column<RankedSpan>>();
        columns.addAll(time());
        columns.addAll(cost());
        columns.addAll(material());
        columns.addAll(newBuild());
        columns.addAll(saving());
        columns.addAll(moneyPerCable());
        return columns;
    }

    private static List<Column<RankedSpan>> time() {
        return List.of(
                Column.real("site_hours", "site_h", 2, "Hours on site, over all shifts.", time(WorkTime::siteHours)),
                Column.real(
                        "crew_hours",
                        "crew_h",
                        2,
                        "Hours of all persons together, travel included.",
                        time(WorkTime::crewHours)),
                Column.integer("shifts", "shifts", "Shifts that the work takes.", time(WorkTime::shifts)),
                Column.integer("nights", "nights", "How many of them are nights.", time(WorkTime::nights)),
                Column.flag(
                        "fits_window",
                        "fits_wind",
                        "Whether a shift has time for the longest pull beside opening, making safe and closing.",
                        time(WorkTime::fitsWindow)),
                Column.real(
                        "shared_a_hours",
                        "shared_f_h",
                        2,
                        "Hours on site saved if the neighbor at the first vault is done in the same shift.",
                        time(WorkTime::sharedAtAHours)),
                Column.real(
                        "shared_b_hours",
                        "shared_t_h",
                        2,
                        "Hours on site saved if the neighbor at the last vault is done in the same shift.",
                        time(WorkTime::sharedAtBHours)),
                Column.text(
                        "step_hours",
                        "step_hours",
                        "Hours on site by step, joined by ;.",
                        effort(effort -> steps(effort.stepHours()))));
    }

    private static List<Column<RankedSpan>> cost() {
        return List.of(
                Column.real("labor_money", "labor", 2, "Cost of labor.", cost(CostItem.LABOR)),
                Column.real(
                        "site_money",
                        "site_money",
                        2,
                        "Cost of traffic control and equipment.",
                        cost(CostItem.TRAFFIC_CONTROL, CostItem.EQUIPMENT)),
                Column.real(
                        "office_money",
                        "office",
                        2,
                        "Cost of permits and engineering.",
                        cost(CostItem.PERMITS, CostItem.ENGINEERING)),
                Column.real(
                        "material_money",
                        "material",
                        2,
                        "Cost of sleeves, lubricant and seals.",
                        cost(CostItem.SLEEVES, CostItem.LUBRICANT, CostItem.SEALS)),
                Column.real(
                        "disposal_money",
                        "disposal",
                        2,
                        "Cost of bags, trips, tipping and pumped water, less what the recycler pays.",
                        cost(CostItem.DISPOSAL, CostItem.RECYCLING)),
                Column.real("overhead_money", "overhead", 2, "Overhead on the costs.", cost(CostItem.OVERHEAD)),
                RECOVERY_MONEY,
                RECOVERY_LOW,
                RECOVERY_LIKELY,
                RECOVERY_HIGH);
    }

    private static List<Column<RankedSpan>> material() {
        return List.of(
                Column.real(
                        "innerduct_out_kg",
                        "out_kg",
                        1,
                        "Mass of innerduct that comes out, by the average wall.",
                        material(MaterialFlow::innerductKg)),
                Column.real(
                        "recycled_kg",
                        "recycl_kg",
                        1,
                        "How much of it a recycler takes.",
                        material(MaterialFlow::recycledKg)),
                Column.integer("bags", "bags", "Bags of chips.", material(MaterialFlow::bags)),
                Column.integer("loads", "loads", "Trips to the recycler.", material(MaterialFlow::loads)),
                Column.real(
                        "water_m3",
                        "water_m3",
                        2,
                        "Water to be pumped, over all shifts.",
                        material(MaterialFlow::waterM3)),
                Column.real(
                        "sleeve_m",
                        "sleeve_m",
                        1,
                        "Sleeve that goes in, with its ends.",
                        material(MaterialFlow::sleeveM)),
                Column.real("lubricant_l", "lubric_l", 1, "Lubricant.", material(MaterialFlow::lubricantLiters)));
    }

    private static List<Column<RankedSpan>> newBuild() {
        return List.of(
                Column.text(
                        "build_method",
                        "bld_method",
                        "How new ducts on the same path would be laid most cheaply.",
                        build(build -> build.method().key())),
                Column.text(
                        "build_surface",
                        "bld_surf",
                        "Surface that they would be laid in: roadway, sidewalk or verge.",
                        effort(effort -> effort.quantities().surface().key())),
                Column.flag(
                        "surface_assumed",
                        "surf_assum",
                        "Whether the recorded surface means none of these, so that one is assumed.",
                        effort(effort -> effort.quantities().surfaceAssumed())),
                Column.integer(
                        "positions_needed",
                        "needed",
                        "Positions that new build is priced for: those gained, but no more than are in demand.",
                        effort(effort -> effort.quantities().positionsNeeded())),
                Column.integer(
                        "build_ducts", "bld_ducts", "New ducts for the positions needed.", build(NewBuild::ducts)),
                NEW_BUILD_MONEY,
                NEW_BUILD_LOW,
                NEW_BUILD_LIKELY,
                NEW_BUILD_HIGH,
                Column.real("trench_avoided_m", "trench_m", 1, "Open trench avoided.", build(NewBuild::trenchM)),
                Column.real("bore_avoided_m", "bore_m", 1, "Boring avoided.", build(NewBuild::boreM)),
                Column.real(
                        "co2e_ice_kg",
                        "co2_ice_kg",
                        1,
                        "Emissions of new build's materials less those of the sleeves laid, by ICE v2.0; not to be added to the"
                                + " next.",
                        build(NewBuild::co2eIceKg)),
                Column.real(
                        "co2e_warm_kg",
                        "co2_war_kg",
                        1,
                        "Emissions avoided by recycling the innerduct, by EPA WARM v16; not to be added to the last.",
                        material(MaterialFlow::co2eWarmKg)));
    }

    private static List<Column<RankedSpan>> saving() {
        return List.of(
                Column.real(
                        "saving_money",
                        "saving",
                        2,
                        "Cost of new build less that of recovery, with all rates at their values; scored for each unit of money spent.",
                        effort(Effort::savingMoney)),
                SAVING_LOW,
                SAVING_LIKELY,
                SAVING_HIGH,
                Column.real(
                        "saving_ratio",
                        "saving_rat",
                        3,
                        "Money saved for each unit of money spent on recovery.",
                        effort(Effort::savingRatio)));
    }

    private static List<Column<RankedSpan>> moneyPerCable() {
        return List.of(
                Column.real(
                        "recovery_money_per_cable",
                        "rec_cable",
                        2,
                        "Cost of recovery for each place gained for a cable.",
                        effort(Effort::recoveryMoneyPerCable)),
                Column.real(
                        "build_money_per_cable",
                        "bld_cable",
                        2,
                        "Cost of new build for each position needed.",
                        effort(Effort::newBuildMoneyPerCable)),
                Column.real(
                        "recovery_money_per_cable_m",
                        "rec_cab_m",
                        2,
                        "Cost of recovery per meter of place gained for a cable.",
                        effort(Effort::recoveryMoneyPerCableM)),
                Column.real(
                        "build_money_per_cable_m",
                        "bld_cab_m",
                        2,
                        "Cost of new build per meter of position needed.",
                        effort(Effort::newBuildMoneyPerCableM)),
                Column.integer(
                        "lead_avoided_days",
                        "lead_days",
                        "By how many days the permits of recovery are there sooner than those of new build.",
                        effort(effort -> effort.quantities().leadDaysAvoided())));
    }

    private static String steps(Amounts<EffortStep> hours) {
        var text = new StringBuilder();
        for (EffortStep step : EffortStep.values()) {
            long hundredths = Math.round(100 * hours.of(step));
            if (hundredths > 0) {
                text.append(text.isEmpty() ? "" : ";")
                        .append(step.key())
                        .append(' ')
                        .append(hundredths / 100.0);
            }
        }
        return text.toString();
    }

    private static Function<RankedSpan, Object> cost(CostItem... items) {
        return effort(effort -> {
            double money = 0;
            for (CostItem item : items) {
                money += effort.costMoney().of(item);
            }
            return money;
        });
    }

    private static Function<RankedSpan, Object> time(Function<WorkTime, Object> cell) {
        return effort(effort -> cell.apply(effort.time()));
    }

    private static Function<RankedSpan, Object> material(Function<MaterialFlow, Object> cell) {
        return effort(effort -> cell.apply(effort.material()));
    }

    private static Function<RankedSpan, Object> build(Function<NewBuild, Object> cell) {
        return effort(effort -> cell.apply(effort.newBuild()));
    }

    private static Column<RankedSpan> low(String name, String shortName, ToDoubleFunction<MoneyRanges> cell) {
        String meaning = "The same in the lower percentile of drawings of the rates that the config names.";
        return Column.real(name, shortName, 2, meaning, money(cell));
    }

    private static Column<RankedSpan> likely(String name, String shortName, ToDoubleFunction<MoneyRanges> cell) {
        return Column.real(name, shortName, 2, "The same in the median of these drawings.", money(cell));
    }

    private static Column<RankedSpan> high(String name, String shortName, ToDoubleFunction<MoneyRanges> cell) {
        return Column.real(name, shortName, 2, "The same in the upper percentile.", money(cell));
    }

    private static Function<RankedSpan, Object> money(ToDoubleFunction<MoneyRanges> cell) {
        return row -> row.money().map(cell::applyAsDouble);
    }

    /** A cell that is itself an optional number is passed on as it is. */
    private static Function<RankedSpan, Object> effort(Function<Effort, Object> cell) {
        return row -> {
            Optional<Effort> effort = row.assessment().effort();
            return effort.isPresent() ? cell.apply(effort.get()) : Optional.empty();
        };
    }
}
