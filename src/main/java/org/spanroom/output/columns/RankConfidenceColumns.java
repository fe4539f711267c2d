package org.spanroom.output.columns;

import java.util.List;
import java.util.function.Function;
import org.spanroom.model.rank.RankConfidence;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of the spans that say how certain a rank is; empty for an excluded span, and where nothing was simulated. */
public final class RankConfidenceColumns {
    /** The only one that no scoring has a part in. */
    public static final Column<RankedSpan> FEASIBLE = Column.real(
            "feasible_chance_pct",
            "feas_pct",
            1,
            CellRange.PERCENT,
            "Chance that every innerduct can be pulled and room is gained, with assumed and uncertain values varied.",
            percent(RankConfidence::feasibleRatio));

    /** Known only once all spans were simulated. */
    public static final Column<RankedSpan> TOP = Column.real(
            "top_chance_pct",
            "top_pct",
            1,
            CellRange.PERCENT,
            "Chance that the span is in the top of the ranking: the first uncertainty.top_count spans.",
            percent(RankConfidence::topRatio));

    private RankConfidenceColumns() {}

    public static List<Column<RankedSpan>> all() {
        return List.of(
                FEASIBLE,
                Column.real(
                        "score_low_points",
                        "score_low",
                        2,
                        CellRange.PERCENT,
                        "10th percentile of the simulated score.",
                        cell(RankConfidence::scoreLowPoints)),
                Column.real(
                        "score_high_points",
                        "score_high",
                        2,
                        CellRange.PERCENT,
                        "90th percentile of the simulated score.",
                        cell(RankConfidence::scoreHighPoints)),
                TOP);
    }

    /** Returns the names of all of them, in their order. */
    public static List<String> names() {
        return all().stream().map(Column::name).toList();
    }

    private static Function<RankedSpan, Object> cell(Function<RankConfidence, Double> number) {
        return row -> row.sureness().map(number);
    }

    private static Function<RankedSpan, Object> percent(Function<RankConfidence, Double> ratio) {
        return row -> row.sureness().map(ratio).map(value -> 100 * value);
    }
}
