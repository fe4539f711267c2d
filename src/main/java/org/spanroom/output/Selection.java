package org.spanroom.output;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.spanroom.model.Line;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/**
 * The spans whose rows are written. Ranks, counts and sums stay those of the whole run.
 *
 * @param asked what was asked for, by the names that the record of the run has for it; empty where all are written
 * @param tests makes a test for the use of one thread
 */
public record Selection(Map<String, String> asked, Supplier<SpanTest> tests) {
    public static final Selection ALL = new Selection(Map.of(), () -> (cells, lonLat) -> true);

    public Selection {
        asked = Collections.unmodifiableMap(new LinkedHashMap<>(asked));
    }

    /** Decides about a span. */
    public interface SpanTest {
        /**
         * Returns whether a span's rows are written.
         *
         * @param cells finds what is written in a column of the span
         * @param lonLat its line, where there is one
         */
        boolean keeps(Function<String, Optional<Object>> cells, Optional<Line> lonLat);
    }

    public boolean isAll() {
        return asked.isEmpty();
    }

    /** Returns a test of a table's rows, for one thread. */
    public <R> Predicate<R> of(Table<R> table, Function<? super R, Optional<Line>> lonLat) {
        if (isAll()) {
            return row -> true;
        }
        Map<String, Column<R>> byName = new HashMap<>();
        table.columns().forEach(column -> byName.put(column.name(), column));
        SpanTest test = tests.get();
        return row -> test.keeps(
                name -> Optional.ofNullable(byName.get(name)).flatMap(column -> column.value(row)), lonLat.apply(row));
    }
}
