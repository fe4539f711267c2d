package org.spanroom.output;

import java.util.HashMap;
import java.util.Map;
import org.spanroom.model.Exclusion;
import org.spanroom.model.RankTotals;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.Room;

/** Counts the spans that pass, row by row. For one thread. */
final class SpanTally {
    private final Map<Exclusion, Long> excluded = new HashMap<>();
    private long spans;
    private long ranked;
    private long bends;
    private long cablesGained;
    private double lengthM;
    private double drawnLengthM;

    void add(RankedSpan row) {
        Room room = row.assessment().room();
        spans++;
        bends += row.assessment().bends().list().size();
        row.verdict().findFirst().ifPresent(why -> excluded.merge(why, 1L, Long::sum));
        if (row.rank().isPresent()) {
            ranked++;
            cablesGained += room.cablesGained();
            lengthM += row.span().lengthM();
            drawnLengthM += row.span().drawnLengthM();
        }
    }

    /** Returns what has been counted since the last call. */
    RankTotals take() {
        var totals = new RankTotals(spans, ranked, excluded, bends, cablesGained, lengthM, drawnLengthM);
        excluded.clear();
        spans = 0;
        ranked = 0;
        bends = 0;
        cablesGained = 0;
        lengthM = 0;
        drawnLengthM = 0;
        return totals;
    }
}
