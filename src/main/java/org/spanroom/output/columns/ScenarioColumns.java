package org.spanroom.output.columns;

import java.util.List;
import org.spanroom.model.rank.ScenarioResult;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** The columns of the results by scenario. */
public final class ScenarioColumns {
    public static final Table<ScenarioResult> TABLE = Table.plain(
            "scenarios",
            "One row for each scenario of the contents that are not recorded, and what the whole run would find "
                    + "in it; no row where no "
                    + "span has assumed contents. Spans with recorded contents are the same in all of them.",
            List.of(
                    Column.text("scenario", "scenario", "Its name: few, typical or many.", ScenarioResult::name),
                    Column.flag(
                            "main_result",
                            "main",
                            "Whether the other tables are based on this scenario.",
                            ScenarioResult::main),
                    Column.integer(
                            "innerduct_count",
                            "innerducts",
                            "Innerducts in a duct whose innerduct count is not recorded.",
                            row -> row.scenario().innerductCount()),
                    Column.integer(
                            "cable_count",
                            "cables",
                            "Cables in a duct whose cable count is not recorded.",
                            row -> row.scenario().cableCount()),
                    Column.real(
                            "chance_pct",
                            "chance_pct",
                            1,
                            "Configured chance of the scenario for such a duct.",
                            row -> 100 * row.scenario().chanceRatio()),
                    Column.integer(
                            "spans_ranked", "ranked", "How many spans would be ranked.", ScenarioResult::spansRanked),
                    Column.integer(
                            "spans_contents_assumed",
                            "cont_assum",
                            "How many of these are based on an assumed count.",
                            ScenarioResult::spansAssumed),
                    Column.real(
                            "length_m",
                            "length_m",
                            3,
                            "Length of the ranked spans, as used in the calculation.",
                            ScenarioResult::lengthM),
                    Column.integer(
                            "positions_gained",
                            "pos_gained",
                            "Positions that recovery would gain, of the ranked spans together.",
                            ScenarioResult::positionsGained),
                    Column.text("currency", "currency", "Currency of the money.", ScenarioResult::currency),
                    Column.real(
                            "recovery_money",
                            "recovery",
                            2,
                            "Cost of recovery on the ranked spans, with all rates at their values.",
                            ScenarioResult::recoveryMoney),
                    Column.real(
                            "build_money",
                            "build",
                            2,
                            "Cost of the new build that it avoids, in the same way.",
                            ScenarioResult::newBuildMoney),
                    Column.real("saving_money", "saving", 2, "New build less recovery.", ScenarioResult::savingMoney)));

    private ScenarioColumns() {}
}
