package org.spanroom.rank;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.pull.FrictionUse;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.Caution;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.GateAnswer;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.Score;
import org.spanroom.model.rank.ScoringSettings;
import org.spanroom.model.rank.UncertaintySettings;
import org.spanroom.model.rank.Verdict;

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
    private final Quantities quantities;
    private final Gates gates;
    private final List<Criterion> criteria = new ArrayList<>();
    private final List<Score.Yardstick> yardsticks;

    /** The same and their curves as arrays, which a simulation reads some hundred times a span. */
    private final Score.Yardstick[] measures;

    private final ValueCurve[] curves;

    /**
     * Prepares a ranking for no day in particular: no embargo is treated as past.
     *
     * @param room the rules that the spans' room was counted by
     * @throws IllegalArgumentException if the settings name a criterion or a gate that does not exist
     */
    public Ranking(ScoringSettings settings, RoomSettings room) {
        this(settings, room, Optional.empty(), LearnedChances.NONE);
    }

    /** Prepares a ranking for a day: embargoes that ended before it are not reported. */
    public Ranking(ScoringSettings settings, RoomSettings room, LocalDate onDate) {
        this(settings, room, Optional.of(onDate), LearnedChances.NONE);
    }

    /**
     * Prepares a ranking.
     *
     * @param onDate the day that it is for; empty for none in particular
     * @param learned what opened ducts say of the others, which counts toward how well these are known
     */
    public Ranking(ScoringSettings settings, RoomSettings room, Optional<LocalDate> onDate, LearnedChances learned) {
        requireKnown(
                "criterion", settings.criteria().keySet(), criteria().stream().map(CriterionInfo::key));
        quantities = new Quantities(settings, learned);
        gates = new Gates(
                settings,
                new SpanFacts.Rules(
                        settings.unknownConsentExcludes(), room.oldCablesNeedCells(), room.enoughPositions(), onDate));
        double sum = settings.criteria().values().stream()
                .mapToDouble(ScoringSettings.Criterion::weightRatio)
                .sum();
        var weighted = new ArrayList<Score.Yardstick>();
        var itsCurves = new ArrayList<ValueCurve>();
        for (Criterion criterion : Criterion.values()) {
            var chosen = settings.criteria().get(criterion.key());
            if (chosen != null && chosen.weightRatio() > 0) {
                criteria.add(criterion);
                itsCurves.add(new ValueCurve(chosen.curve()));
                weighted.add(new Score.Yardstick(criterion.info(), chosen.weightRatio() / sum));
            }
        }
        yardsticks = List.copyOf(weighted);
        measures = weighted.toArray(Score.Yardstick[]::new);
        curves = itsCurves.toArray(ValueCurve[]::new);
    }

    /** Returns every criterion that scoring settings may name, in the order of scores. */
    public static List<CriterionInfo> criteria() {
        return Stream.of(Criterion.values()).map(Criterion::info).toList();
    }

    /** Returns the key of every gate that scoring settings switch, in the order of reasons. */
    public static List<String> gateKeys() {
        return Stream.of(Gate.values()).map(Gate::key).toList();
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
        for (int number : standings.bestFirst(spans)) {
            ranked.add(run.ranked(ranked.size(), standings, assessments.get(number)));
        }
        return List.copyOf(ranked);
    }

    /** Returns what every gate says of one span, with its evidence. */
    List<GateAnswer> gates(Assessment assessment, EmptyDucts emptyDucts) {
        return gates.answers(assessment, emptyDucts);
    }

    /** Returns the score of one span, which depends only on that span. */
    public Score score(Assessment assessment) {
        return score(quantities(assessment));
    }

    /** Returns the score that such quantities give. */
    Score score(double[] found) {
        double[] values = new double[found.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = curves[i].valueAt(found[i]);
        }
        return new Score(yardsticks, found, values);
    }

    /** Returns the criteria that have a weight, in the order of the score's parts. */
    public List<CriterionInfo> weighted() {
        return yardsticks.stream().map(Score.Yardstick::criterion).toList();
    }

    /** Returns the quantity of each criterion that has a weight, in the order of {@link #weighted}. */
    public double[] quantities(Assessment assessment) {
        double[] found = new double[yardsticks.size()];
        for (int i = 0; i < found.length; i++) {
            found[i] = criteria.get(i).quantity(assessment, quantities);
        }
        return found;
    }

    /**
     * Returns the quantities of a span that has other room, and therefore another saving, and is as assessed in all else.
     *
     * @param taken its quantities as assessed
     */
    public double[] quantities(Assessment assessment, double[] taken, Room room, double savingRatio) {
        double[] found = new double[taken.length];
        for (int i = 0; i < found.length; i++) {
            found[i] = criteria.get(i).quantity(assessment, taken[i], room, savingRatio);
        }
        return found;
    }

    /** Returns the points that such quantities give, the very total of {@link #score}, without making a score of them. */
    public double points(double[] quantitiesByCriterion) {
        double total = 0;
        for (int i = 0; i < quantitiesByCriterion.length; i++) {
            total += measures[i].points(curves[i].valueAt(quantitiesByCriterion[i]));
        }
        return total;
    }

    /** Returns how far each pulling limit is used in each state of friction, from the end that is worked from. */
    public FrictionUse useByFriction(Assessment assessment) {
        return WorkingEnd.useByFriction(assessment);
    }

    /** Returns whether what a span saves over new build counts. */
    public boolean weighsSaving() {
        return criteria.contains(Criterion.SAVING);
    }

    /** Returns a simulation that scores what it draws by this ranking. */
    public Simulation simulation(UncertaintySettings uncertainty) {
        int easePlace = criteria.indexOf(Criterion.EASE_PULL);
        int savingPlace = criteria.indexOf(Criterion.SAVING);
        return new Simulation(
                uncertainty,
                this::pointsOf,
                easePlace,
                savingPlace,
                (fromPercent, toPercent) -> mostPoints(easePlace, fromPercent, toPercent),
                (fromRatio, toRatio) -> mostPoints(savingPlace, fromRatio, toRatio));
    }

    private double mostPoints(int place, double from, double to) {
        return measures[place].points(curves[place].mostValue(from, to));
    }

    /** Returns the points that one criterion gives for a quantity. */
    private double pointsOf(int place, double quantity) {
        return measures[place].points(curves[place].valueAt(quantity));
    }

    /** Returns what gates and cautions say of one span. */
    Verdict verdict(Assessment assessment, EmptyDucts emptyDucts) {
        return gates.verdict(assessment, emptyDucts);
    }

    /** Returns the verdict on a span of which earlier columns give the keys of all reasons and cautions. */
    Verdict verdict(Set<String> keys) {
        List<Caution> cautions = Stream.of(CautionKind.values())
                .filter(kind -> keys.contains(kind.key()))
                .map(CautionKind::caution)
                .toList();
        return gates.verdict(gate -> keys.contains(gate.key()), cautions);
    }

    /** @throws IllegalArgumentException if a key is none of the known ones */
    static void requireKnown(String what, Set<String> keys, Stream<String> known) {
        List<String> all = known.sorted().toList();
        for (String key : keys) {
            if (!all.contains(key)) {
                throw new IllegalArgumentException(
                        "scoring has no " + what + " '" + key + "'; there are " + String.join(", ", all));
            }
        }
    }
}
