package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.MaterialFlow;
import org.spanroom.model.effort.WorkTime;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of the spans about hours, crews and material; empty where no innerduct comes out. */
final class EffortColumns {
    private EffortColumns() {}

    static List<Column<RankedSpan>> all() {
        var columns = new ArrayList<>(hours());
        columns.addAll(shared());
        columns.addAll(materials());
        return columns;
    }

    private static List<Column<RankedSpan>> hours() {
        return List.of(
                Column.real(
                        "site_hours",
                        "site_h",
                        2,
                        CellRange.AMOUNT,
                        "Hours on site, over all shifts.",
                        time(WorkTime::siteHours)),
                Column.real(
                        "labor_hours",
                        "labor_h",
                        2,
                        CellRange.AMOUNT,
                        "Hours of all persons of the crew together, including travel.",
                        time(WorkTime::laborHours)),
                Column.integer(
                        "shifts", "shifts", CellRange.COUNT, "Shifts that the work takes.", time(WorkTime::shifts)),
                Column.integer(
                        "nights", "nights", CellRange.COUNT, "How many of them are nights.", time(WorkTime::nights)),
                Column.flag(
                        "fits_window",
                        "fits_wind",
                        "Whether a shift has time for the longest pull in addition to opening, making safe and "
                                + "closing the vaults.",
                        time(WorkTime::fitsWindow)));
    }

    private static List<Column<RankedSpan>> shared() {
        return List.of(
                Column.real(
                        "shared_a_hours",
                        "shared_f_h",
                        2,
                        CellRange.AMOUNT,
                        "Hours on site saved if an adjacent span at vault_a is done in the same shift.",
                        time(WorkTime::sharedAtAHours)),
                Column.real(
                        "shared_b_hours",
                        "shared_t_h",
                        2,
                        CellRange.AMOUNT,
                        "Hours on site saved if an adjacent span at vault_b is done in the same shift.",
                        time(WorkTime::sharedAtBHours)),
                Column.real(
                        "site_hour_money",
                        "hour_money",
                        2,
                        CellRange.AMOUNT,
                        "Cost of one hour on site: crew, traffic control and machines, with overhead.",
                        effort(Effort::siteHourMoney)));
    }

    private static List<Column<RankedSpan>> materials() {
        return List.of(
                Column.real(
                        "innerduct_out_kg",
                        "out_kg",
                        1,
                        CellRange.AMOUNT,
                        "Mass of the removed innerduct, based on the average wall.",
                        material(MaterialFlow::innerductKg)),
                Column.integer("bags", "bags", CellRange.COUNT, "Bags of chips.", material(MaterialFlow::bags)),
                Column.integer(
                        "loads", "loads", CellRange.COUNT, "Trips to the recycler.", material(MaterialFlow::loads)),
                Column.real(
                        "water_m3",
                        "water_m3",
                        2,
                        CellRange.AMOUNT,
                        "Water to be pumped, over all shifts.",
                        material(MaterialFlow::waterM3)),
                Column.real(
                        "sleeve_m",
                        "sleeve_m",
                        1,
                        CellRange.AMOUNT,
                        "Length of sleeve placed, including the length left over at its ends.",
                        material(MaterialFlow::sleeveM)),
                Column.real(
                        "lubricant_l",
                        "lubric_l",
                        1,
                        CellRange.AMOUNT,
                        "Lubricant.",
                        material(MaterialFlow::lubricantLiters)));
    }

    private static Function<RankedSpan, Object> time(Function<WorkTime, Object> cell) {
        return effort(effort -> cell.apply(effort.time()));
    }

    private static Function<RankedSpan, Object> material(Function<MaterialFlow, Object> cell) {
        return effort(effort -> cell.apply(effort.material()));
    }

    /** A cell that is itself an optional number is passed on as it is. */
    static Function<RankedSpan, Object> effort(Function<Effort, Object> cell) {
        return row -> {
            Optional<Effort> effort = row.assessment().effort();
            return effort.isPresent() ? cell.apply(effort.get()) : Optional.empty();
        };
    }
}
