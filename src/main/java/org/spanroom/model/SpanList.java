package org.spanroom.model;

import java.util.AbstractList;
import java.util.List;
import java.util.RandomAccess;

/**
 * All spans of a network, numbered from 0. A span may be put together anew each time it is asked for, since millions of them would
 * not go into the memory otherwise: what only a name or a duct is needed for asks for that. Unmodifiable; safe for use by several
 * threads.
 */
public abstract class SpanList extends AbstractList<Span> implements RandomAccess {
    /** Returns the id of a span. */
    public abstract String id(int number);

    /** Returns the duct of a span. */
    public abstract Duct duct(int number);

    /** Returns whether the line of any span has elevations. */
    public abstract boolean hasElevations();

    /** Compares the ids of two spans as texts. */
    public int compareIds(int number, int other) {
        return id(number).compareTo(id(other));
    }

    /** Returns a list of spans that are all there is to keep. */
    public static SpanList of(List<Span> spans) {
        return spans instanceof SpanList list ? list : new Kept(List.copyOf(spans));
    }

    private static final class Kept extends SpanList {
        private final List<Span> spans;

        Kept(List<Span> spans) {
            this.spans = spans;
        }

        @Override
        public Span get(int number) {
            return spans.get(number);
        }

        @Override
        public int size() {
            return spans.size();
        }

        @Override
        public String id(int number) {
            return spans.get(number).id();
        }

        @Override
        public Duct duct(int number) {
            return spans.get(number).duct();
        }

        @Override
        public boolean hasElevations() {
            return spans.stream().anyMatch(span -> span.lonLat().hasZ());
        }
    }
}
