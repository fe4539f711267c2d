package org.spanroom.network;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.Line;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;

/** Packs the spans of one route after another. For use by one thread. */
final class RoutePacker {
    /** The length that counts and as drawn; the stops at both ends follow, an offset and the ordinates each. */
    private static final int LENGTHS = 2;

    /** Vault from, vault to, first of the route's vertices between them, how many. */
    private static final int PLACES = 4;

    private static final int MOST_STRIDE = LENGTHS + 8;
    private static final int WHOLE_SEARCHES = 16;
    private static final int NEAR_SEARCH = 64;

    private final List<Vault> vaults;
    private double[] numbers = new double[8 * MOST_STRIDE];
    private int[] places = new int[8 * PLACES];
    private Line @Nullable [] own;
    private int size;
    /** The route's vertex at which the next span should begin, and how many may still be compared without success. */
    private int next;

    private long searches;

    RoutePacker(List<Vault> vaults) {
        this.vaults = vaults;
    }

    void clear() {
        size = 0;
        own = null;
        next = 0;
        searches = 0;
    }

    /** What a span is apart from its line. */
    record Ends(int fromVault, int toVault, double lengthM, double drawnM, double fromOffsetM, double toOffsetM) {}

    void add(Ends span, SpanLine line, Line route) {
        if ((size + 1) * PLACES > places.length) {
            numbers = Arrays.copyOf(numbers, 2 * numbers.length);
            places = Arrays.copyOf(places, 2 * places.length);
        }
        int first = find(line, route);
        int place = size * PLACES;
        places[place] = span.fromVault();
        places[place + 1] = span.toVault();
        places[place + 2] = first < 0 ? RouteSpans.OWN_LINE : first;
        places[place + 3] = line.size() - 2;
        if (first < 0) {
            int room = places.length / PLACES;
            if (own == null || own.length < room) {
                own = own == null ? new Line[room] : Arrays.copyOf(own, room);
            }
            own[size] = line.lonLat();
        }
        int stop = RouteSpans.stride(route);
        int number = size * stride(stop);
        numbers[number] = span.lengthM();
        numbers[number + 1] = span.drawnM();
        numbers[number + LENGTHS] = span.fromOffsetM();
        numbers[number + LENGTHS + stop] = span.toOffsetM();
        for (int axis = 0; axis + 1 < stop; axis++) {
            numbers[number + LENGTHS + 1 + axis] = line.ordinate(false, axis);
            numbers[number + LENGTHS + stop + 1 + axis] = line.ordinate(true, axis);
        }
        size++;
    }

    /**
     * Spans follow one another along the route, so that each is looked for where the last one ended. Where that does not find it, a
     * few times the whole route is searched; a long route whose spans are often no stretch of it would else take for ever.
     */
    private int find(SpanLine line, Line route) {
        boolean whole = searches < WHOLE_SEARCHES;
        int first = line.firstBetween(route, next, whole ? Integer.MAX_VALUE : NEAR_SEARCH);
        searches += first < 0 || Math.abs(first - next) > NEAR_SEARCH ? 1 : 0;
        next = Math.min(route.size(), (first < 0 ? next : first) + line.size() - 2);
        return first;
    }

    private static int stride(int stop) {
        return LENGTHS + 2 * stop;
    }

    /** Returns the spans added since the packer was cleared. */
    ChainSpans spans(Route route) {
        if (size == 0) {
            return JoinedSpans.NONE;
        }
        int stop = RouteSpans.stride(route.lonLat());
        boolean linked = isLinked(stop);
        boolean lengthsDiffer = lengthsDiffer(stop);
        int stops = linked ? size + 1 : 2 * size;
        double[] packed = new double[stops * stop + (lengthsDiffer ? 2 : 1) * size];
        int[] packedPlaces = new int[stops + 2 * size];
        for (int span = 0; span < size; span++) {
            int from = linked ? span : 2 * span;
            int first = span * stride(stop);
            System.arraycopy(numbers, first + LENGTHS, packed, from * stop, 2 * stop);
            packed[stops * stop + span] = numbers[first + 1];
            if (lengthsDiffer) {
                packed[stops * stop + size + span] = numbers[first];
            }
            System.arraycopy(places, span * PLACES, packedPlaces, from, 2);
            packedPlaces[stops + span] = places[span * PLACES + 2];
            packedPlaces[stops + size + span] = places[span * PLACES + 3];
        }
        Line @Nullable [] ownLines = own == null ? null : Arrays.copyOf(own, size);
        return new RouteSpans(route, vaults, packed, packedPlaces, linked, lengthsDiffer, ownLines);
    }

    /** Returns whether every span begins exactly as the one before it ends. */
    private boolean isLinked(int stop) {
        for (int span = 1; span < size; span++) {
            int last = (span - 1) * stride(stop) + LENGTHS + stop;
            int first = span * stride(stop) + LENGTHS;
            if (places[(span - 1) * PLACES + 1] != places[span * PLACES]
                    || !Arrays.equals(numbers, last, last + stop, numbers, first, first + stop)) {
                return false;
            }
        }
        return true;
    }

    private boolean lengthsDiffer(int stop) {
        for (int span = 0; span < size; span++) {
            int first = span * stride(stop);
            if (Double.compare(numbers[first], numbers[first + 1]) != 0) {
                return true;
            }
        }
        return false;
    }
}
