package org.spanroom.output;

import java.util.HashMap;
import java.util.Map;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.model.rank.Ranked;
import org.spanroom.model.rank.RankedSpan;

/** Counts the spans that pass, row by row. For one thread. */
final class SpanTally {
    private final Map<Exclusion, Long> excluded = new HashMap<>();
    private long spans;
    private long ranked;
    private long doubtful;
    private long positionsGained;
    private double lengthM;
    private double drawnLengthM;

    void add(RankedSpan row) {
        add(
                row,
                Math.max(0, row.assessment().room().positionsGained().orElse(0)),
                row.span().lengthM(),
                row.span().drawnLengthM());
    }

    /** Counts a span of which no more is known than this. */
    void add(Ranked row, long gained, double spanLengthM, double spanDrawnLengthM) {
        spans++;
        row.verdict().findFirst().ifPresent(why -> excluded.merge(why, 1L, Long::sum));
        if (row.rank().isPresent()) {
            ranked++;
            doubtful += row.verdict().isPullDoubtful() ? 1 : 0;
            positionsGained += gained;
            lengthM += spanLengthM;
            drawnLengthM += spanDrawnLengthM;
        }
    }

    /** Returns what has been counted since the last call. */
    RankTotals take() {
        var totals = new RankTotals(spans, ranked, excluded, doubtful, positionsGained, lengthM, drawnLengthM);
        excluded.clear();
        spans = 0;
        ranked = 0;
        doubtful = 0;
        positionsGained = 0;
        lengthM = 0;
        drawnLengthM = 0;
        return totals;
    }
}
