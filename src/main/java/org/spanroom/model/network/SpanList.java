package org.spanroom.model.network;

import java.util.AbstractList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.RandomAccess;
import org.spanroom.model.Line;

/**
 * All spans of a network, numbered from 0. A span may be put together again each time it is requested, since millions of them would
 * not go into the memory otherwise: what only a name, a duct, a length or a vault is needed for asks for that. Unmodifiable; safe for use by several
 * threads.
 */
public abstract class SpanList extends AbstractList<Span> implements RandomAccess, IdOrder {
    /** Returns the id of a span. */
    public abstract String id(int number);

    /** Returns the duct of a span. */
    public abstract Duct duct(int number);

    /** Returns which vault a span begins at: its place in {@link Network#vaults}. */
    public abstract int fromVault(int number);

    /** Returns which vault a span ends at, by its place among the network's vaults. */
    public abstract int toVault(int number);

    /** Returns the length that counts of a span. */
    public abstract double lengthM(int number);

    /** Returns the length of a span's line on the ground, m. */
    public double drawnLengthM(int number) {
        return get(number).drawnLengthM();
    }

    /** Returns the line of a span in degrees, with its elevations where it has them. */
    public Line lonLat(int number) {
        return get(number).lonLat();
    }

    /** Returns the name of the vault that a span begins at. */
    public String fromId(int number) {
        return get(number).from().id();
    }

    /** Returns the name of the vault that a span ends at. */
    public String toId(int number) {
        return get(number).to().id();
    }

    /** Returns the names of the routes that a span is made of, in order. */
    public List<String> routeIds(int number) {
        return get(number).routeIds();
    }

    /**
     * Reads a little of everything that is kept about some spans, so that it is in the processor's cache when they are used. Spans in the order of
     * a ranking are scattered over the memory.
     */
    public void prefetch(int[] numbers) {}

    /** Returns whether the line of any span has elevations. */
    public abstract boolean hasElevations();

    /** Returns the section of a span. */
    public SectionKey section(int number) {
        return SectionKey.of(get(number));
    }

    @Override
    public long leadingOfId(int number) {
        return LeadingText.of(id(number));
    }

    @Override
    public int compareIds(int number, int other) {
        return id(number).compareTo(id(other));
    }

    /** Returns a list of spans that are all there is to keep, and of no network: their vaults have numbers of their own. */
    public static SpanList of(List<Span> spans) {
        return of(spans, List.of());
    }

    /** Returns a list of spans that are all there is to keep, between the vaults of a network. */
    static SpanList of(List<Span> spans, List<VaultUse> vaults) {
        return spans instanceof SpanList list ? list : new Kept(List.copyOf(spans), vaults);
    }

    private static final class Kept extends SpanList {
        private final List<Span> spans;
        private final int[] from;
        private final int[] to;

        Kept(List<Span> spans, List<VaultUse> vaults) {
            var places = new HashMap<String, Integer>();
            vaults.forEach(use -> place(use.vault(), places));
            this.spans = spans;
            from = spans.stream().mapToInt(span -> place(span.from(), places)).toArray();
            to = spans.stream().mapToInt(span -> place(span.to(), places)).toArray();
        }

        private static int place(Vault vault, Map<String, Integer> places) {
            return places.computeIfAbsent(vault.id(), id -> places.size());
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
        public int fromVault(int number) {
            return from[number];
        }

        @Override
        public int toVault(int number) {
            return to[number];
        }

        @Override
        public double lengthM(int number) {
            return spans.get(number).lengthM();
        }

        @Override
        public boolean hasElevations() {
            return spans.stream().anyMatch(span -> span.lonLat().hasZ());
        }
    }
}
