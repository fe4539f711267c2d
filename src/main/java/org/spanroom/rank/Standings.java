package org.spanroom.rank;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntBinaryOperator;
import java.util.stream.IntStream;

/**
 * What decides the order of many spans, and nothing else of them: whether each is ranked, and its points. Two threads may note two
 * spans at the same time, each once.
 */
public final class Standings {
    private static final int MOST_OBJECTS = 1 << 20;

    /** So few are in order sooner by inserting one after another; most spans of equal points are as few. */
    private static final int MOST_INSERTED = 16;

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
     * Returns the numbers of all spans, the best first, the excluded last; equal ones in the order that compares their ids.
     *
     * <p>Spans are sorted by the leading bits of their points, which leave room for the number in one long; the few that these do
     * not distinguish are then put in order by all bits and the id.
     */
    public int[] bestFirst(IntBinaryOperator compareIds) {
        int bits = Integer.SIZE - Integer.numberOfLeadingZeros(Math.max(1, points.length - 1));
        long[] keys = new long[points.length];
        Arrays.parallelSetAll(keys, span -> leading(points[span]) >>> bits << bits | span);
        Arrays.parallelSort(keys);
        long ofNumber = (1L << bits) - 1;
        int[] order =
                Arrays.stream(keys).mapToInt(key -> (int) (key & ofNumber)).toArray();
        IntBinaryOperator exact = (a, b) -> compare(a, b, compareIds);
        int[] begins = equalRuns(keys, bits);
        IntStream.range(0, begins.length / 2)
                .parallel()
                .forEach(run -> sort(order, begins[2 * run], begins[2 * run + 1], exact));
        return order;
    }

    private int compare(int span, int other, IntBinaryOperator compareIds) {
        boolean excluded = isExcluded(span);
        if (excluded != isExcluded(other)) {
            return excluded ? 1 : -1;
        }
        int byPoints = excluded ? 0 : Double.compare(points[other], points[span]);
        return byPoints == 0 ? compareIds.applyAsInt(span, other) : byPoints;
    }

    /** Returns where runs of several spans with the same leading bits begin and end, one after another. */
    private static int[] equalRuns(long[] keys, int bits) {
        IntStream.Builder runs = IntStream.builder();
        for (int from = 0; from < keys.length; ) {
            int to = from + 1;
            while (to < keys.length && keys[to] >>> bits == keys[from] >>> bits) {
                to++;
            }
            if (to - from > 1) {
                runs.add(from).add(to);
            }
            from = to;
        }
        return runs.build().toArray();
    }

    /**
     * Returns a number that is the smaller the more points there are, and not negative: the bits of doubles that are not negative are
     * in the order of the doubles.
     */
    private static long leading(double points) {
        return Long.MAX_VALUE - (Double.isNaN(points) ? 0 : Double.doubleToRawLongBits(points + 0.0));
    }

    /** Millions may have the same points, the excluded; as objects they would take five times their room, so only a part is at a time. */
    static void sort(int[] order, int from, int to, IntBinaryOperator comparator) {
        if (to - from <= MOST_INSERTED) {
            insert(order, from, to, comparator);
            return;
        }
        if (to - from > MOST_OBJECTS) {
            int middle = (from + to) >>> 1;
            sort(order, from, middle, comparator);
            sort(order, middle, to, comparator);
            merge(order, from, middle, to, comparator);
            return;
        }
        Integer[] run = IntStream.range(from, to).mapToObj(i -> order[i]).toArray(Integer[]::new);
        Arrays.parallelSort(run, comparator::applyAsInt);
        for (int i = from; i < to; i++) {
            order[i] = run[i - from];
        }
    }

    private static void insert(int[] order, int from, int to, IntBinaryOperator comparator) {
        for (int i = from + 1; i < to; i++) {
            int inserted = order[i];
            int at = i;
            while (at > from && comparator.applyAsInt(order[at - 1], inserted) > 0) {
                order[at] = order[at - 1];
                at--;
            }
            order[at] = inserted;
        }
    }

    private static void merge(int[] order, int from, int middle, int to, IntBinaryOperator comparator) {
        int[] first = Arrays.copyOfRange(order, from, middle);
        int a = 0;
        int b = middle;
        for (int i = from; a < first.length; i++) {
            order[i] = b < to && comparator.applyAsInt(order[b], first[a]) < 0 ? order[b++] : first[a++];
        }
    }
}
