package org.spanroom.rank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.RescoredSpan;
import org.spanroom.model.rank.Score;
import org.spanroom.model.rank.ScoringSettings;
import org.spanroom.model.rank.Verdict;

/** Another scoring for spans whose quantities, and reasons against them, are known already. */
public final class Rescoring {
    private static final Comparator<RescoredSpan> BEST_FIRST = Comparator.comparing(
                    (RescoredSpan span) -> span.verdict().isExcluded())
            .thenComparingDouble(span -> span.verdict().isExcluded() ? 0 : -points(span))
            .thenComparing(RescoredSpan::spanId);

    private final Ranking ranking;

    /**
     * Prepares a scoring.
     *
     * @param room the rules that the spans' room was counted by
     * @throws IllegalArgumentException if the settings name a criterion or a gate that does not exist
     */
    public Rescoring(ScoringSettings settings, RoomSettings room) {
        this.ranking = new Ranking(settings, room);
    }

    /** Returns the criteria that have a weight, in the order that {@link #score} takes their quantities in. */
    public List<CriterionInfo> criteria() {
        return ranking.weighted();
    }

    public Score score(double[] quantities) {
        return ranking.score(quantities);
    }

    /**
     * Returns what the gates say of every reason that applies to a span.
     *
     * @param keys the words of reasons and cautions in the columns of an earlier run; others are ignored
     */
    public Verdict verdict(Set<String> keys) {
        return ranking.verdict(keys);
    }

    private static double points(RescoredSpan span) {
        double points = span.score().totalPoints();
        return Double.isNaN(points) ? 0 : points;
    }

    /** Returns the spans in the order of their scores, each with its place; the excluded last, without one. */
    public static List<RescoredSpan> ranked(List<RescoredSpan> spans) {
        var ordered = new ArrayList<>(spans);
        ordered.sort(BEST_FIRST);
        var ranked = new ArrayList<RescoredSpan>(ordered.size());
        for (RescoredSpan span : ordered) {
            ranked.add(span.withRank(
                    span.verdict().isExcluded() ? OptionalInt.empty() : OptionalInt.of(ranked.size() + 1)));
        }
        return List.copyOf(ranked);
    }
}
