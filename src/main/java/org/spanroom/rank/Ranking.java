package org.spanroom.rank;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.spanroom.model.Assessment;
import org.spanroom.model.Score;
import org.spanroom.model.ScoringSettings;

/**
 * Puts assessed spans in order of their score.
 *
 * <p>A score is the weighted sum of values between 0 and 1, one for each criterion, each a piecewise-linear function of
 * an absolute quantity of the span alone. Hence the order of two spans never changes because a third was added or removed.
 * Equal scores are put in order of span id. Excluded spans follow, without a rank, in order of id; their score is still
 * given, so that one can see what the reason for exclusion costs.
 */
public final class Ranking {
    private final Map<Criterion, ValueCurve> curves = new EnumMap<>(Criterion.class);
    private final Map<Criterion, Double> weights = new EnumMap<>(Criterion.class);

    /**
     * Prepares a ranking.
     *
     * @throws IllegalArgumentException if the settings name a criterion that does not exist
     */
    public Ranking(ScoringSettings settings) {
        requireKnown(settings.criteria().keySet());
        double sum = settings.criteria().values().stream()
                .mapToDouble(ScoringSettings.Criterion::weightRatio)
                .sum();
        for (Criterion criterion : Criterion.values()) {
            var chosen = settings.criteria().get(criterion.key());
            if (chosen != null && chosen.weightRatio() > 0) {
                curves.put(criterion, new ValueCurve(chosen.curve()));
                weights.put(criterion, chosen.weightRatio() / sum);
            }
        }
    }

    /** Returns the names that scoring settings may use. */
    public static Set<String> criteria() {
        var keys = new TreeSet<String>();
        Stream.of(Criterion.values()).map(Criterion::key).forEach(keys::add);
        return keys;
    }

    /** Notes where a span stands; the order of all follows from the standings alone. */
    public void stand(int span, Assessment assessment, Standings standings) {
        if (assessment.room().exclusion().isPresent()) {
            standings.excluded(span);
        } else {
            standings.ranked(span, score(assessment).totalPoints());
        }
    }

    /** Returns the score of one span, which depends on nothing but that span. */
    public Score score(Assessment assessment) {
        var parts = new ArrayList<Score.Part>(curves.size());
        curves.forEach((criterion, curve) -> {
            double quantity = criterion.quantityOf(assessment);
            double weight = weights.getOrDefault(criterion, 0.0);
            parts.add(new Score.Part(criterion.key(), criterion.unit(), quantity, curve.valueAt(quantity), weight));
        });
        return new Score(parts);
    }

    private static void requireKnown(Set<String> keys) {
        for (String key : keys) {
            if (!criteria().contains(key)) {
                throw new IllegalArgumentException(
                        "scoring has no criterion '" + key + "'; there are " + String.join(", ", criteria()));
            }
        }
    }
}
