package org.spanroom.output;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.Ranked;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.RescoredSpan;
import org.spanroom.output.columns.MoneyColumns;
import org.spanroom.output.columns.RankConfidenceColumns;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of the spans when another scoring is tried on them: all that it does not decide is as the run wrote it. */
public final class RescoredColumns {
    private static final List<Column<RankedSpan>> FEASIBLE = List.of(RankConfidenceColumns.FEASIBLE);

    private final List<String> recorded;
    private final Map<String, Column<Ranked>> standing = new HashMap<>();

    private RescoredColumns(List<CriterionInfo> criteria, List<String> recorded) {
        this.recorded = recorded;
        StandingColumns.all(criteria).forEach(column -> standing.put(column.name(), column));
    }

    /**
     * Returns a layer of spans as another scoring has it.
     *
     * @param whole the layer as a whole run writes it, laid out with the same criteria
     * @param criteria those that have a weight now
     * @param recorded the names of the columns that the run wrote
     */
    public static Table<RescoredSpan> of(Table<RankedSpan> whole, List<CriterionInfo> criteria, List<String> recorded) {
        var rescored = new RescoredColumns(criteria, recorded);
        var columns = new ArrayList<Column<RescoredSpan>>();
        whole.columns().forEach(shown -> rescored.column(shown).ifPresent(columns::add));
        return whole.with(span -> span.lonLat().map(Shape::line).orElse(Shape.EMPTY), columns);
    }

    /**
     * Finds where a column's cells come from; nowhere where the run did not write it and no score has it. What was simulated under the
     * other scoring would mislead, but for what no scoring has a part in.
     */
    private Optional<Column<RescoredSpan>> column(Column<RankedSpan> shown) {
        Column<Ranked> decided = standing.get(shown.name());
        if (decided != null) {
            return Optional.of(decided.narrowed());
        }
        int place = recorded.indexOf(shown.name());
        if (isAmong(RankConfidenceColumns.all(), shown) || isAmong(MoneyColumns.DRAWN, shown)) {
            boolean kept = place >= 0 && (isAmong(MoneyColumns.DRAWN, shown) || isAmong(FEASIBLE, shown));
            return Optional.of(
                    shown.with(span -> kept && span.rank().isPresent() ? at(span, place) : Optional.empty()));
        }
        return place < 0 ? Optional.empty() : Optional.of(shown.with(span -> at(span, place)));
    }

    private static boolean isAmong(List<Column<RankedSpan>> columns, Column<?> shown) {
        return columns.stream().anyMatch(column -> column.name().equals(shown.name()));
    }

    private static Optional<Object> at(RescoredSpan span, int place) {
        return Optional.ofNullable(span.recorded().get(place));
    }
}
