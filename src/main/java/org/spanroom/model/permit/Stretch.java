package org.spanroom.model.permit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.spanroom.model.Check;

/**
 * A stretch of a span, as distances along it from its first vault in the length that counts ({@code Span.lengthM}).
 */
public record Stretch(double fromM, double toM) {
    /** Ends that lie this close are one: far below any drawing, far above the noise of the arithmetic. */
    private static final double SAME_PLACE_M = 1e-6;

    private static final Comparator<Stretch> ALONG =
            Comparator.comparingDouble(Stretch::fromM).thenComparing(Stretch::toM);

    public Stretch {
        Check.notNegative("fromM", fromM);
        Check.notNegative("toM", toM);
        if (toM < fromM) {
            throw new IllegalArgumentException("toM must be >= fromM " + fromM + ", was " + toM);
        }
    }

    public double lengthM() {
        return toM - fromM;
    }

    /** Returns stretches that cover the same, in order along the span, none of which touches another. */
    public static List<Stretch> union(List<Stretch> stretches) {
        return union(stretches, SAME_PLACE_M);
    }

    /**
     * Returns stretches in order along the span, where a gap that is shorter than the given one is closed: it is treated as covered.
     *
     * @param gapM 0 or more
     */
    public static List<Stretch> unionOverGaps(List<Stretch> stretches, double gapM) {
        return union(stretches, Math.max(SAME_PLACE_M, Math.nextDown(gapM)));
    }

    private static List<Stretch> union(List<Stretch> stretches, double reachM) {
        var merged = new ArrayList<Stretch>();
        for (Stretch next : stretches.stream().sorted(ALONG).toList()) {
            int last = merged.size() - 1;
            if (last >= 0 && next.fromM - merged.get(last).toM <= reachM) {
                merged.set(last, new Stretch(merged.get(last).fromM, Math.max(merged.get(last).toM, next.toM)));
            } else {
                merged.add(next);
            }
        }
        return List.copyOf(merged);
    }

    /** Returns how many meters stretches cover; what several of them cover counts once. */
    public static double coveredM(List<Stretch> stretches) {
        return union(stretches).stream().mapToDouble(Stretch::lengthM).sum();
    }
}
