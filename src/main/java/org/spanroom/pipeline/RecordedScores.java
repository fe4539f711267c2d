package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.Score;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.table.Column;
import org.spanroom.rank.Ranking;
import org.spanroom.rank.Rescoring;

/** The scores of the spans of an earlier run, calculated from their recorded quantities. */
final class RecordedScores {
    private final Rescoring scoring;
    private final int[] quantities;
    private final int positionsNow;

    /**
     * Prepares to score.
     *
     * @param columns those that the run wrote
     */
    RecordedScores(Rescoring scoring, List<String> columns) {
        this.scoring = scoring;
        this.quantities = scoring.criteria().stream()
                .mapToInt(criterion -> columns.indexOf(criterion.quantityColumn()))
                .toArray();
        this.positionsNow = columns.indexOf(SpanColumns.POSITIONS_NOW.name());
    }

    /** Finds the first criterion whose quantity the run did not write, or null. */
    static List<CriterionInfo> missing(Rescoring scoring, List<String> columns) {
        return scoring.criteria().stream()
                .filter(criterion -> !columns.contains(criterion.quantityColumn()))
                .toList();
    }

    /** Opens the spans of a run, of whose columns all that may be there are known. */
    static RecordedSpans open(RecordedRun run) {
        return RecordedSpans.open(run, types());
    }

    /** Returns the columns that a run may have written, with their types. */
    static List<Column<?>> types() {
        var layout = new SpanLayout(Ranking.criteria(), false, List.of(), ColumnGroup.all());
        var types = new ArrayList<Column<?>>(SpanColumns.all(layout).columns());
        types.add(StandingColumns.REASONS);
        types.add(SpanColumns.FEASIBLE_DRAWS);
        return types;
    }

    /** An empty quantity of a span whose contents are known is 0. */
    Score of(RecordedSpans.Row row) {
        boolean isKnown = positionsNow < 0 || !Double.isNaN(row.number(positionsNow));
        return scoring.score(Arrays.stream(quantities)
                .mapToDouble(row::number)
                .map(number -> Double.isNaN(number) && isKnown ? 0 : number)
                .toArray());
    }
}
