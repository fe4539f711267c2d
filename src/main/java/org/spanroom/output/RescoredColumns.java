package org.spanroom.output;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.spanroom.model.CriterionInfo;
import org.spanroom.model.Exclusion;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.RescoredSpan;

/** The columns of the spans when another scoring is tried on them: all else is as the run wrote it. */
final class RescoredColumns {
    /** These were simulated under the other scoring and would mislead. */
    private static final Set<String> EMPTIED = Set.of("score_low_points", "score_high_points", "top_chance_pct");

    private static final Map<String, Function<RescoredSpan, Object>> NEW = Map.of(
            "rank", RescoredSpan::rank,
            "score_points", span -> span.score().totalPoints(),
            "exclusion", span -> span.verdict().findFirst().map(Exclusion::key),
            "exclusion_why", span -> span.verdict().findFirst().map(Exclusion::explanation),
            "exclusions",
                    span -> span.verdict().exclusions().stream()
                            .map(Exclusion::key)
                            .collect(joining(";")),
            "cautions", span -> String.join(";", span.verdict().cautionKeys()));

    private RescoredColumns() {}

    /**
     * Returns the layer.
     *
     * @param criteria those that have a weight now
     * @param recorded the names of the columns that the run wrote
     */
    static Table<RescoredSpan> table(List<CriterionInfo> criteria, List<String> recorded) {
        var columns = new ArrayList<Column<RescoredSpan>>();
        Map<String, Integer> places = new HashMap<>();
        for (int i = 0; i < recorded.size(); i++) {
            places.put(recorded.get(i), i);
        }
        for (Column<RankedSpan> shown : SpanColumns.all(criteria)) {
            cell(shown.name(), criteria, places)
                    .ifPresent(cell -> columns.add(new Column<>(
                            shown.name(), shown.shortName(), shown.type(), shown.decimals(), shown.meaning(), cell)));
        }
        return Table.layer(
                "spans",
                SpanColumns.MEANING,
                GeometryKind.LINE,
                span -> span.lonLat().map(Shape::line).orElse(Shape.EMPTY),
                columns);
    }

    /** Finds where a column's cells come from; nowhere where the run did not write it and no score has it. */
    private static Optional<Function<RescoredSpan, Object>> cell(
            String name, List<CriterionInfo> criteria, Map<String, Integer> places) {
        if (NEW.containsKey(name)) {
            return Optional.of(NEW.getOrDefault(name, span -> Optional.empty()));
        }
        if (EMPTIED.contains(name)) {
            return Optional.of(span -> Optional.empty());
        }
        for (int i = 0; i < criteria.size(); i++) {
            int place = i;
            if (name.equals(criteria.get(i).key() + "_points")) {
                return Optional.of(span -> span.score().part(place).points());
            }
            if (name.equals(criteria.get(i).key() + "_value")) {
                return Optional.of(span -> span.score().part(place).valueRatio());
            }
        }
        return Optional.ofNullable(places.get(name)).map(RescoredColumns::recorded);
    }

    private static Function<RescoredSpan, Object> recorded(int place) {
        return span -> Optional.ofNullable(span.recorded().get(place));
    }
}
