package org.spanroom.model.rank;

import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Sums over the ranked spans by the values of one of the owner's own fields. A field may have as many values as there are spans: the
 * first {@link #MOST} in the order of the ranking have sums of their own, all others one together.
 *
 * @param byValue in the order in which the values first occur
 * @param others the sum over all other values
 */
public record KeptTotals(Map<String, Sum> byValue, Sum others) {
    /** How many values have sums of their own. */
    public static final int MOST = 1000;

    public static final KeptTotals NONE = new KeptTotals(Map.of(), Sum.NONE);

    /**
     * Sums over ranked spans.
     *
     * @param positionsGained positions that recovery adds
     * @param lengthM the length that counts
     */
    public record Sum(long ranked, long positionsGained, double lengthM) {
        public static final Sum NONE = new Sum(0, 0, 0);

        public Sum plus(Sum other) {
            return new Sum(ranked + other.ranked, positionsGained + other.positionsGained, lengthM + other.lengthM);
        }
    }

    public KeptTotals {
        byValue = Collections.unmodifiableMap(new LinkedHashMap<>(byValue));
    }

    /** Returns these sums and those of spans that follow in the ranking. */
    public KeptTotals plus(KeptTotals next) {
        var together = new LinkedHashMap<>(byValue);
        Sum rest = others.plus(next.others);
        for (var entry : next.byValue.entrySet()) {
            if (together.containsKey(entry.getKey()) || together.size() < MOST) {
                together.merge(entry.getKey(), entry.getValue(), Sum::plus);
            } else {
                rest = rest.plus(entry.getValue());
            }
        }
        return new KeptTotals(together, rest);
    }

    /** Returns the values with their sums, those with most positions to gain first; of equal ones by the value. */
    public List<Map.Entry<String, Sum>> mostGainedFirst() {
        return byValue.entrySet().stream()
                .sorted(Comparator.comparingLong((Map.Entry<String, Sum> entry) ->
                                -entry.getValue().positionsGained())
                        .thenComparing(Map.Entry.comparingByKey()))
                .toList();
    }
}
