package org.spanroom.learn;

import java.util.EnumMap;
import java.util.Map;
import org.spanroom.model.rank.SpanChances;

/** How often each event was looked for in opened ducts, and how often it was there. */
final class Sightings {
    private final Map<ChanceKind, int[]> counts = new EnumMap<>(ChanceKind.class);

    Sightings() {
        for (ChanceKind kind : ChanceKind.values()) {
            counts.put(kind, new int[2]);
        }
    }

    void add(ChanceKind kind, boolean there) {
        int[] count = count(kind);
        count[0]++;
        count[1] += there ? 1 : 0;
    }

    private int[] count(ChanceKind kind) {
        return counts.getOrDefault(kind, new int[2]);
    }

    /** Returns how many ducts were looked at for an event. */
    int looked(ChanceKind kind) {
        return count(kind)[0];
    }

    /** Returns in how many of them it was there. */
    int events(ChanceKind kind) {
        return count(kind)[1];
    }

    /** Returns the chances after these sightings. */
    SpanChances after(SpanChances before, int priorSpans) {
        return new SpanChances(
                after(ChanceKind.OTHER_SIZE, before, priorSpans),
                after(ChanceKind.MORE_CABLE, before, priorSpans),
                after(ChanceKind.MORE_CABLE_ASSUMED, before, priorSpans),
                after(ChanceKind.BLOCKED, before, priorSpans),
                after(ChanceKind.BLOCKED_UNKNOWN, before, priorSpans),
                after(ChanceKind.CONTENTS_FEW, before, priorSpans),
                after(ChanceKind.CONTENTS_TYPICAL, before, priorSpans),
                after(ChanceKind.CONTENTS_MANY, before, priorSpans));
    }

    private double after(ChanceKind kind, SpanChances before, int priorSpans) {
        return BetaBinomial.meanRatio(kind.of(before), priorSpans, events(kind), looked(kind));
    }
}
