package org.spanroom.output.columns;

import java.util.List;
import java.util.function.Function;
import org.spanroom.model.Angle;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of the bends on the way from vault to vault. */
final class WayColumns {
    private WayColumns() {}

    static List<Column<RankedSpan>> all() {
        return List.of(
                Column.real(
                        "bend_total_deg",
                        "bend_total",
                        2,
                        CellRange.AMOUNT,
                        "Total of all bends between the vaults, left and right.",
                        bends(b -> b.total().deg())),
                Column.integer(
                        "bend_count",
                        "bend_count",
                        CellRange.COUNT,
                        "How many bends the line has.",
                        bends(b -> b.list().size())),
                Column.real(
                        "largest_bend_deg",
                        "bend_max",
                        2,
                        CellRange.AMOUNT,
                        "Deflection of the largest bend.",
                        bends(b -> b.findLargest().map(Bend::deflection).map(Angle::deg))),
                Column.real(
                        "smallest_radius_m",
                        "radius_min",
                        2,
                        CellRange.AMOUNT,
                        "Radius of the tightest bend.",
                        bends(b -> b.findTightest().map(Bend::radiusM))),
                Column.flag(
                        "radius_assumed",
                        "rad_assume",
                        "Whether the radius of the tightest bend is the configured sweep radius, because no arc "
                                + "is drawn.",
                        bends(b -> b.findTightest().map(Bend::radiusAssumed))));
    }

    private static Function<RankedSpan, Object> bends(Function<Bends, Object> cell) {
        return row -> cell.apply(row.assessment().bends());
    }
}
