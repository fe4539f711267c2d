package org.spanroom.output;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.KeptTotals;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.model.rank.Ranked;
import org.spanroom.model.rank.RankedSpan;

/** Counts the spans that pass, row by row. For one thread. */
final class SpanTally {
    private final Map<Exclusion, Long> excluded = new HashMap<>();
    private final List<Map<String, KeptTotals.Sum>> kept = new ArrayList<>();
    private long spans;
    private long ranked;
    private long doubtful;
    private long tightBends;
    private long positionsGained;
    private double lengthM;
    private double drawnLengthM;

    /**
     * What is doubtful of a ranked span.
     *
     * @param pull whether it comes out only when well lubricated
     * @param bend whether an innerduct must pass a bend that is too tight for it
     */
    record Doubts(boolean pull, boolean bend) {}

    void add(RankedSpan row) {
        add(
                row,
                Math.max(0, row.assessment().room().positionsGained().orElse(0)),
                row.span().lengthM(),
                row.span().drawnLengthM(),
                row.span().duct().kept());
    }

    /** Counts a span of which no more is known than this. */
    void add(Ranked row, long gained, double spanLengthM, double spanDrawnLengthM, List<String> keptValues) {
        add(
                row.verdict().findFirst(),
                row.rank().isPresent(),
                new Doubts(row.verdict().isPullDoubtful(), row.verdict().isBendTight()),
                gained,
                spanLengthM,
                spanDrawnLengthM,
                keptValues);
    }

    /** Counts a span that has a rank or not, for a first reason. */
    void add(
            Optional<Exclusion> why,
            boolean isRanked,
            Doubts doubts,
            long gained,
            double spanLengthM,
            double spanDrawnLengthM,
            List<String> keptValues) {
        spans++;
        why.ifPresent(reason -> excluded.merge(reason, 1L, Long::sum));
        if (isRanked) {
            ranked++;
            doubtful += doubts.pull() ? 1 : 0;
            tightBends += doubts.bend() ? 1 : 0;
            positionsGained += gained;
            lengthM += spanLengthM;
            drawnLengthM += spanDrawnLengthM;
            addKept(keptValues, new KeptTotals.Sum(1, gained, spanLengthM));
        }
    }

    private void addKept(List<String> values, KeptTotals.Sum sum) {
        for (int field = 0; field < values.size(); field++) {
            if (field == kept.size()) {
                kept.add(new LinkedHashMap<>());
            }
            kept.get(field).merge(values.get(field), sum, KeptTotals.Sum::plus);
        }
    }

    private List<KeptTotals> takeKept() {
        List<KeptTotals> taken = kept.stream()
                .map(values -> KeptTotals.NONE.plus(new KeptTotals(values, KeptTotals.Sum.NONE)))
                .toList();
        kept.clear();
        return taken;
    }

    /** Returns what has been counted since the last call. */
    RankTotals take() {
        var totals = new RankTotals(
                spans, ranked, excluded, doubtful, tightBends, positionsGained, lengthM, drawnLengthM, takeKept());
        excluded.clear();
        spans = 0;
        ranked = 0;
        doubtful = 0;
        tightBends = 0;
        positionsGained = 0;
        lengthM = 0;
        drawnLengthM = 0;
        return totals;
    }
}
