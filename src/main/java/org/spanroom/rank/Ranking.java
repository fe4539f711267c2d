package org.spanroom.rank;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.spanroom.model.Assessment;
import org.spanroom.model.Exclusion;
import org.spanroom.model.FrictionUse;
import org.spanroom.model.GateAnswer;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.RoomSettings;
import org.spanroom.model.Score;
import org.spanroom.model.ScoringSettings;
import org.spanroom.model.SpanList;
import org.spanroom.model.Verdict;

/**
 * Puts assessed spans in order of their score, those that a gate excludes last.
 *
 * <p>A score is the weighted sum of values between 0 and 1, one for each criterion, each a piecewise-linear function of
 * an absolute quantity of the span alone. Hence the order of two ranked spans never changes because a third was added or
 * removed. One gate looks at other spans, that of an empty duct in the same bank: it may exclude, but never reorders.
 * Equal scores are put in order of span id. Excluded spans follow, without a rank, in order of id; their score is still
 * given, so that one can see what the reason for exclusion costs.
 */
public final class Ranking {
    private final ScoringSettings settings;
    private final Quantities quantities;
    private final Gates gates;
    private final Cautions cautions;
    private final List<Criterion> criteria = new ArrayList<>();
    private final List<ValueCurve> curves = new ArrayList<>();
    private final List<Score.Yardstick> yardsticks;

    /**
     * Prepares a ranking for no day in particular: no embargo counts as past.
     *
     * @param room the rules that the spans' room was counted by
     * @throws IllegalArgumentException if the settings name a criterion that does not exist
     */
    public Ranking(ScoringSettings settings, RoomSettings room) {
        this(settings, room, Optional.empty());
    }

    /** Prepares a ranking for a day, likewise: embargoes that ended before it are not told. */
    public Ranking(ScoringSettings settings, RoomSettings room, LocalDate onDate) {
        this(settings, room, Optional.of(onDate));
    }

    private Ranking(ScoringSettings settings, RoomSettings room, Optional<LocalDate> onDate) {
        requireKnown(settings.criteria().keySet());
        this.settings = settings;
        quantities = new Quantities(settings);
        gates = new Gates(settings, room);
        cautions = new Cautions(onDate);
        double sum = settings.criteria().values().stream()
                .mapToDouble(ScoringSettings.Criterion::weightRatio)
                .sum();
        var measures = new ArrayList<Score.Yardstick>();
        for (Criterion criterion : Criterion.values()) {
            var chosen = settings.criteria().get(criterion.key());
            if (chosen != null && chosen.weightRatio() > 0) {
                criteria.add(criterion);
                curves.add(new ValueCurve(chosen.curve()));
                measures.add(new Score.Yardstick(criterion.key(), criterion.unit(), chosen.weightRatio() / sum));
            }
        }
        yardsticks = List.copyOf(measures);
    }

    /** Returns the names that scoring settings may use. */
    public static Set<String> criteria() {
        var keys = new TreeSet<String>();
        Stream.of(Criterion.values()).map(Criterion::key).forEach(keys::add);
        return keys;
    }

    /** Returns this ranking for the spans of one run. */
    public RunRanking among(SpanList all) {
        return new RunRanking(this, EmptyDucts.of(all));
    }

    /** Returns all spans, the best first, the excluded last; for spans so few that all of them may be held. */
    public List<RankedSpan> rank(List<Assessment> assessments) {
        SpanList spans = SpanList.of(assessments.stream().map(Assessment::span).toList());
        RunRanking run = among(spans);
        var standings = new Standings(assessments.size());
        for (int i = 0; i < assessments.size(); i++) {
            run.stand(i, assessments.get(i), standings);
        }
        var ranked = new ArrayList<RankedSpan>(assessments.size());
        for (int number : standings.bestFirst(spans::compareIds)) {
            ranked.add(run.ranked(ranked.size(), standings, assessments.get(number)));
        }
        return List.copyOf(ranked);
    }

    /**
     * Returns what every gate says of one span, for whoever wants to see why.
     *
     * @param all the spans of the run, among which an empty duct may lie beside it
     */
    public List<GateAnswer> gates(Assessment assessment, SpanList all) {
        return gates.answers(assessment, EmptyDucts.of(all));
    }

    /** Returns the score of one span, which depends on nothing but that span. */
    public Score score(Assessment assessment) {
        return score(quantities(assessment));
    }

    /** Returns the score that such quantities give. */
    Score score(double[] found) {
        double[] values = new double[found.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = curves.get(i).valueAt(found[i]);
        }
        return new Score(yardsticks, found, values);
    }

    /** Returns the names of the criteria that have a weight, in the order of the score's parts. */
    public List<String> weighted() {
        return yardsticks.stream().map(Score.Yardstick::criterion).toList();
    }

    /** Returns the quantity of each criterion that has a weight, in the order of {@link #weighted}. */
    public double[] quantities(Assessment assessment) {
        double[] found = new double[yardsticks.size()];
        for (int i = 0; i < found.length; i++) {
            found[i] = criteria.get(i).rounded(quantities.of(criteria.get(i), assessment));
        }
        return found;
    }

    /** Returns the points that such quantities give, the very total of {@link #score}, without making a score of them. */
    public double points(double[] quantitiesByCriterion) {
        double total = 0;
        for (int i = 0; i < quantitiesByCriterion.length; i++) {
            total += yardsticks.get(i).points(curves.get(i).valueAt(quantitiesByCriterion[i]));
        }
        return total;
    }

    /** Returns how far the tightest pulling limit is used in each state of friction, from the end that is worked from. */
    public FrictionUse useByFriction(Assessment assessment) {
        return WorkingEnd.useByFriction(assessment);
    }

    /** Returns the place of a criterion among the quantities, or -1 where it has no weight. */
    public int placeOf(String criterion) {
        for (int i = 0; i < yardsticks.size(); i++) {
            if (yardsticks.get(i).criterion().equals(criterion)) {
                return i;
            }
        }
        return -1;
    }

    /** Returns the points that one criterion gives for a quantity. */
    public double pointsOf(int place, double quantity) {
        return yardsticks.get(place).points(curves.get(place).valueAt(quantity));
    }

    /** Returns what gates and cautions say of one span. */
    Verdict verdict(Assessment assessment, EmptyDucts emptyDucts) {
        var exclusions = new TreeSet<Exclusion>();
        var waived = new TreeSet<Exclusion>();
        for (Exclusion reason : gates.reasons(assessment, emptyDucts)) {
            (settings.excludes(reason) ? exclusions : waived).add(reason);
        }
        return new Verdict(exclusions, waived, cautions.of(assessment, emptyDucts));
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
