package org.spanroom.model.rank;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Counts and sums over the spans of a ranking.
 *
 * @param excluded how many spans are not ranked, by reason
 * @param doubtful how many ranked spans can be pulled only when well lubricated
 * @param tightBends how many ranked spans have an innerduct that must pass a bend tighter than its minimum radius
 * @param positionsGained positions that recovery adds, over all ranked spans
 * @param rankedLengthM the length that counts, over all ranked spans
 * @param rankedDrawnLengthM drawn length on the ground, over all ranked spans
 * @param kept sums by the values of each of the owner's fields that are kept
 */
public record RankTotals(
        long spans,
        long ranked,
        Map<Exclusion, Long> excluded,
        long doubtful,
        long tightBends,
        long positionsGained,
        double rankedLengthM,
        double rankedDrawnLengthM,
        List<KeptTotals> kept) {
    public static final RankTotals NONE = new RankTotals(0, 0, Map.of(), 0, 0, 0, 0, 0, List.of());

    public RankTotals {
        excluded = Map.copyOf(excluded);
        kept = List.copyOf(kept);
    }

    /** Returns these totals and others as one; sums of lengths depend on the order in which they are put together. */
    public RankTotals plus(RankTotals other) {
        var reasons = new TreeMap<>(excluded);
        other.excluded.forEach((reason, count) -> reasons.merge(reason, count, Long::sum));
        return new RankTotals(
                spans + other.spans,
                ranked + other.ranked,
                reasons,
                doubtful + other.doubtful,
                tightBends + other.tightBends,
                positionsGained + other.positionsGained,
                rankedLengthM + other.rankedLengthM,
                rankedDrawnLengthM + other.rankedDrawnLengthM,
                together(kept, other.kept));
    }

    private static List<KeptTotals> together(List<KeptTotals> some, List<KeptTotals> next) {
        if (some.isEmpty() || next.isEmpty()) {
            return some.isEmpty() ? next : some;
        }
        return IntStream.range(0, some.size())
                .mapToObj(field -> some.get(field).plus(next.get(field)))
                .toList();
    }
}
