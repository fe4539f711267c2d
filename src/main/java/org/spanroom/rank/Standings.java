package org.spanroom.rank;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicInteger;
import org.spanroom.model.network.IdOrder;

/**
 * What decides the order of many spans, and nothing else of them: whether each is ranked, and its points. Two threads may note two
 * spans at the same time, each once.
 */
public final class Standings {
    /** So few with nearly the same points are put in order one by one. */
    private static final int FEW = 16;

    private final double[] points;
    private final AtomicInteger ranked = new AtomicInteger();

    /** Begins standings of this many spans. */
    public Standings(int spans) {
        points = new double[spans];
    }

    public int size() {
        return points.length;
    }

    /** Notes a ranked span with its score. */
    public void ranked(int span, double scorePoints) {
        if (!(scorePoints >= 0)) {
            throw new IllegalArgumentException("points must be >= 0, were " + scorePoints);
        }
        points[span] = scorePoints;
        ranked.incrementAndGet();
    }

    /** Notes an excluded span. */
    public void excluded(int span) {
        points[span] = Double.NaN;
    }

    public boolean isExcluded(int span) {
        return Double.isNaN(points[span]);
    }

    /** Returns the points of a ranked span; NaN for an excluded one. */
    public double points(int span) {
        return points[span];
    }

    /** Returns how many spans are ranked. */
    public int countRanked() {
        return ranked.get();
    }

    /**
     * Returns the numbers of all spans, the best first, the excluded last; equal ones in the order of their ids.
     *
     * <p>Spans are sorted by the leading bits of their points; those that these do not distinguish by all bits, then by what their ids begin with, and the few
     * that are left by their ids.
     */
    public int[] bestFirst(IdOrder ids) {
        return LeadingOrder.of(
                points.length, span -> leading(points[span]), (order, from, to) -> sort(order, from, to, ids));
    }

    private void sort(int[] order, int from, int to, IdOrder ids) {
        if (to - from <= FEW) {
            NumberSort.sort(order, from, to, (a, b) -> compare(a, b, ids));
        } else if (areEqual(order, from, to)) {
            sortById(order, from, to, ids);
        } else {
            long least = Arrays.stream(order, from, to)
                    .mapToLong(span -> leading(points[span]))
                    .min()
                    .orElseThrow();
            LeadingOrder.sort(
                    order,
                    from,
                    to,
                    points.length - 1,
                    span -> (leading(points[span]) - least) << (Integer.SIZE - 1),
                    (equal, begin, end) -> sortById(equal, begin, end, ids));
        }
    }

    private static void sortById(int[] order, int from, int to, IdOrder ids) {
        int[] spans = Arrays.copyOfRange(order, from, to);
        int[] byId = LeadingOrder.of(
                spans.length,
                i -> ids.leadingOfId(spans[i]),
                (places, begin, end) ->
                        NumberSort.sort(places, begin, end, (a, b) -> ids.compareIds(spans[a], spans[b])));
        for (int i = 0; i < byId.length; i++) {
            order[from + i] = spans[byId[i]];
        }
    }

    /** Returns whether all have the same points, or none. */
    private boolean areEqual(int[] order, int from, int to) {
        for (int i = from + 1; i < to; i++) {
            if (Double.compare(points[order[i]], points[order[from]]) != 0) {
                return false;
            }
        }
        return true;
    }

    private int compare(int span, int other, IdOrder ids) {
        boolean excluded = isExcluded(span);
        if (excluded != isExcluded(other)) {
            return excluded ? 1 : -1;
        }
        int byPoints = excluded ? 0 : Double.compare(points[other], points[span]);
        return byPoints == 0 ? ids.compareIds(span, other) : byPoints;
    }

    /**
     * Returns a number that is the smaller the more points there are, largest without points, and not negative: the bits of doubles that are not negative are
     * in the order of the doubles.
     */
    private static long leading(double points) {
        return Double.isNaN(points) ? Long.MAX_VALUE : Long.MAX_VALUE - 1 - Double.doubleToRawLongBits(points + 0.0);
    }
}
