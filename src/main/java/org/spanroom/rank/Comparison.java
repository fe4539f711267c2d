package org.spanroom.rank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.spanroom.model.Counted;
import org.spanroom.model.rank.SpanMove;
import org.spanroom.model.rank.Standing;

/**
 * Finds which spans have another rank in a second run than in a first, and which parts of their scores explain it.
 *
 * <p>Give all standings of the first run, then those of the second, then ask. Only what differs is kept of the second run.
 */
public final class Comparison {
    /** A smaller change would be shown as 0.00. */
    private static final double LEAST_SHOWN_POINTS = 0.005;

    /** By cause; in it where the ranks differ most first. */
    private static final Comparator<SpanMove> FARTHEST_FIRST = Comparator.comparing(SpanMove::cause)
            .thenComparingInt(move -> -Math.abs(move.rankGain().orElse(0)))
            .thenComparingInt(SpanMove::bestRank)
            .thenComparing(SpanMove::spanId);

    private final Map<String, Standing> first = new HashMap<>();
    private final List<SpanMove> moves = new ArrayList<>();

    /** Takes a span of the first run. */
    public void before(String spanId, Standing standing) {
        first.put(spanId, standing);
    }

    /** Takes a span of the second run that has the same name in the first. */
    public void after(String spanId, Standing standing) {
        after(spanId, spanId, standing);
    }

    /**
     * Takes a span of the second run, when all of the first are in.
     *
     * @param firstId what the first run calls it
     */
    public void after(String spanId, String firstId, Standing standing) {
        Standing found = first.remove(firstId);
        if (found == null || !found.equals(standing)) {
            moves.add(move(spanId, Optional.ofNullable(found), Optional.of(standing)));
        }
    }

    /** Returns the spans with another rank, by cause, then by how far they moved. */
    public List<SpanMove> moves() {
        var all = new ArrayList<>(moves);
        first.forEach((id, gone) -> all.add(move(id, Optional.of(gone), Optional.empty())));
        all.sort(FARTHEST_FIRST);
        return List.copyOf(all);
    }

    private static SpanMove move(String spanId, Optional<Standing> before, Optional<Standing> after) {
        List<String> parts = before.isPresent() && after.isPresent()
                ? partChanges(before.get().partPoints(), after.get().partPoints())
                : List.of();
        return new SpanMove(spanId, before, after, Optional.empty(), parts, List.of());
    }

    private static List<String> partChanges(SortedMap<String, Double> before, SortedMap<String, Double> after) {
        var criteria = new TreeSet<>(before.keySet());
        criteria.addAll(after.keySet());
        var changePoints = new TreeMap<String, Double>();
        for (String criterion : criteria) {
            double change = after.getOrDefault(criterion, 0.0) - before.getOrDefault(criterion, 0.0);
            if (Math.abs(change) >= LEAST_SHOWN_POINTS) {
                changePoints.put(criterion, change);
            }
        }
        return changePoints.entrySet().stream()
                .sorted(Comparator.<Map.Entry<String, Double>>comparingDouble(entry -> -Math.abs(entry.getValue()))
                        .thenComparing(Map.Entry::getKey))
                .map(entry -> entry.getKey() + " " + Counted.signed(entry.getValue(), 2))
                .toList();
    }
}
