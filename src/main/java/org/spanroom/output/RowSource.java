package org.spanroom.output;

import java.util.List;
import java.util.function.Function;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.columns.StandingColumns;

/**
 * Where the rows of a table of results come from.
 *
 * @param <R> what a row is
 */
public sealed interface RowSource<R> {
    /** Returns how many rows there are at least in a run with so many spans. */
    int atLeast(int spans);

    /**
     * Rows that belong to a span, written span by span in the order of the ranking. Their table has the column
     * {@link StandingColumns#SPAN_ID}.
     *
     * @param rows the rows of one span
     * @param forEach whether every span has at least one
     */
    record OfSpans<R>(Function<RankedSpan, ? extends List<R>> rows, boolean forEach) implements RowSource<R> {
        @Override
        public int atLeast(int spans) {
            return forEach ? spans : 0;
        }
    }

    /** Rows that the run has once, in the order in which it has them. */
    record OfRun<R>(Function<Results, List<R>> rows) implements RowSource<R> {
        @Override
        public int atLeast(int spans) {
            return 0;
        }
    }
}
