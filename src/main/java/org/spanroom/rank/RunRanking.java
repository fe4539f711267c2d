package org.spanroom.rank;

import java.util.List;
import java.util.OptionalInt;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.GateAnswer;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.Score;
import org.spanroom.model.rank.Verdict;

/** A ranking of the spans of one run, of which any may be looked at again. Safe for use by several threads. */
public final class RunRanking {
    /** The key of the reason that it is not known whether a cable is live. */
    public static final String SERVICE_UNKNOWN = Gate.SERVICE_UNKNOWN.key();

    private final Ranking ranking;
    private final EmptyDucts emptyDucts;

    RunRanking(Ranking ranking, EmptyDucts emptyDucts) {
        this.ranking = ranking;
        this.emptyDucts = emptyDucts;
    }

    /**
     * Notes the rank of a span; the order of all follows from the scores alone. One without a score, of unknown contents while that
     * gate is open, ranks with those of 0 points.
     *
     * @return the span with what decides its place; its rank, 0 if it has one, follows from all spans only
     */
    public RankedSpan stand(int number, Assessment assessment, Standings standings) {
        Verdict verdict = ranking.verdict(assessment, emptyDucts);
        Score score = ranking.score(assessment);
        if (verdict.isExcluded()) {
            standings.excluded(number);
            return new RankedSpan(OptionalInt.empty(), assessment, score, verdict);
        }
        double points = score.totalPoints();
        standings.ranked(number, Double.isNaN(points) ? 0 : points);
        return new RankedSpan(OptionalInt.of(0), assessment, score, verdict);
    }

    /** Returns what gates and cautions say of a span, which need not be as the run has it. */
    public Verdict verdict(Assessment assessment) {
        return ranking.verdict(assessment, emptyDucts);
    }

    /** Returns what every gate says of one span, with its evidence. */
    public List<GateAnswer> gates(Assessment assessment) {
        return ranking.gates(assessment, emptyDucts);
    }

    /**
     * Returns a span with what decided its place.
     *
     * @param place in the order of the standings, from 0
     */
    public RankedSpan ranked(int place, Standings standings, Assessment assessment) {
        var rank = place < standings.countRanked() ? OptionalInt.of(place + 1) : OptionalInt.empty();
        return ranked(rank, assessment);
    }

    /** Returns a span whose rank is known, with what decided it. */
    public RankedSpan ranked(OptionalInt rank, Assessment assessment) {
        return new RankedSpan(rank, assessment, ranking.score(assessment), ranking.verdict(assessment, emptyDucts));
    }
}
