package org.spanroom.output.columns;

import static org.spanroom.output.columns.EffortColumns.effort;

import java.util.List;
import java.util.function.Function;
import org.spanroom.model.effort.MaterialFlow;
import org.spanroom.model.effort.NewBuild;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of the spans about emissions; empty where no innerduct comes out. */
final class CarbonColumns {
    private CarbonColumns() {}

    static List<Column<RankedSpan>> all() {
        return List.of(
                Column.real(
                        "recycled_kg",
                        "recycl_kg",
                        1,
                        CellRange.AMOUNT,
                        "Part of innerduct_out_kg that a recycler accepts.",
                        material(MaterialFlow::recycledKg)),
                Column.real(
                        "co2e_ice_kg",
                        "co2_ice_kg",
                        1,
                        CellRange.NUMBER,
                        "Emissions of the new-build materials minus those of the sleeves placed, by ICE v2.0; "
                                + "do not add to co2e_warm_kg.",
                        build(NewBuild::co2eIceKg)),
                Column.real(
                        "co2e_dig_kg",
                        "co2_dig_kg",
                        1,
                        CellRange.AMOUNT,
                        "Part of co2e_ice_kg that a trench emits once, however many ducts lie in it: surface and encasement.",
                        build(NewBuild::co2eDigKg)),
                Column.real(
                        "co2e_warm_kg",
                        "co2_war_kg",
                        1,
                        CellRange.NUMBER,
                        "Emissions avoided by recycling the innerduct, by EPA WARM v16; do not add to co2e_ice_kg.",
                        material(MaterialFlow::co2eWarmKg)));
    }

    private static Function<RankedSpan, Object> build(Function<NewBuild, Object> cell) {
        return effort(effort -> cell.apply(effort.newBuild()));
    }

    private static Function<RankedSpan, Object> material(Function<MaterialFlow, Object> cell) {
        return effort(effort -> cell.apply(effort.material()));
    }
}
