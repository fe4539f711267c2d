package org.spanroom.output;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Function;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.columns.RankConfidenceColumns;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.table.Column;

/**
 * A span in its place, with only what is not packed with its row: its names, which the network holds anyway, and what follows from all spans
 * together.
 *
 * @param number in the list of spans
 * @param bankPlace as of a {@link RankedSpan}
 * @param topRatio the chance that it is in the top of the ranking; empty for an excluded span, or where nothing was simulated
 */
public record PlacedSpan(SpanList spans, int number, OptionalInt rank, int bankPlace, OptionalDouble topRatio) {
    private static final String ROUTES = "routes";
    private static final String BANK_PLACE = "bank_place";

    /** Finds the cell of each column that is not packed. */
    private static final Map<String, Function<PlacedSpan, Object>> CELLS = Map.of(
            StandingColumns.SPAN_ID.name(),
            span -> span.spans.id(span.number),
            StandingColumns.RANK.name(),
            PlacedSpan::rank,
            SpanColumns.DUCT.name(),
            span -> span.spans.duct(span.number).id(),
            SpanColumns.BANK.name(),
            span -> span.spans.duct(span.number).bankId(),
            BANK_PLACE,
            PlacedSpan::bankPlace,
            ROUTES,
            span -> joined(span.spans.routeIds(span.number)),
            SpanColumns.VAULT_A.name(),
            span -> span.spans.fromId(span.number),
            SpanColumns.VAULT_B.name(),
            span -> span.spans.toId(span.number),
            RankConfidenceColumns.TOP.name(),
            span -> span.topPercent());

    /** Most spans lie on one route. */
    private static String joined(List<String> routeIds) {
        return routeIds.size() == 1 ? routeIds.get(0) : String.join(";", routeIds);
    }

    private OptionalDouble topPercent() {
        return topRatio.isPresent() ? OptionalDouble.of(100 * topRatio.getAsDouble()) : topRatio;
    }

    /** Returns the columns that are not packed, by name. */
    static Map<String, Column<PlacedSpan>> columns(List<Column<RankedSpan>> all) {
        Map<String, Column<PlacedSpan>> later = new TreeMap<>();
        for (Column<RankedSpan> column : all) {
            Function<PlacedSpan, Object> cell = CELLS.get(column.name());
            if (cell != null) {
                later.put(column.name(), column.with(cell));
            }
        }
        return later;
    }
}
