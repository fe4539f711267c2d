package org.spanroom.output.columns;

import static org.spanroom.output.columns.EffortColumns.effort;

import java.util.List;
import java.util.function.Function;
import org.spanroom.model.effort.MaterialFlow;
import org.spanroom.model.effort.NewBuild;
import org.spanroom.model.rank.RankedSpan;
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
                        "Mass of the removed innerduct (innerduct_out_kg) that a recycler takes.",
                        material(MaterialFlow::recycledKg)),
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

    private static Function<RankedSpan, Object> build(Function<NewBuild, Object> cell) {
        return effort(effort -> cell.apply(effort.newBuild()));
    }

    private static Function<RankedSpan, Object> material(Function<MaterialFlow, Object> cell) {
        return effort(effort -> cell.apply(effort.material()));
    }
}
