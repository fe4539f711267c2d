package org.spanroom.output.columns;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import org.spanroom.model.network.Circumstances;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of the spans with recorded circumstances that matter before work. */
final class CircumstanceColumns {
    private CircumstanceColumns() {}

    static List<Column<RankedSpan>> all() {
        return List.of(
                Column.integer(
                        "circuits_at_risk",
                        "circuits",
                        CellRange.COUNT,
                        "How many circuits the cables carry, as recorded.",
                        recorded(Circumstances::circuitsAtRisk)),
                Column.text(
                        "joint_owners",
                        "joint_own",
                        "Other owners of the duct, as recorded.",
                        recorded(Circumstances::jointOwners)),
                Column.text(
                        "embargo_until",
                        "embargo",
                        CellRange.DAY,
                        "Last day on which no work may disturb the cables, e.g. 2027-03-31.",
                        recorded(c -> c.embargoUntil().map(LocalDate::toString))));
    }

    private static Function<RankedSpan, Object> recorded(Function<Circumstances, Object> cell) {
        return row -> cell.apply(row.span().duct().circumstances());
    }
}
