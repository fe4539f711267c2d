package org.spanroom.model.pull;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Unrecoverable;

/**
 * What it takes to pull every innerduct of one span from either end.
 *
 * @param judgedBy the state of friction of the outcome
 * @param pulls the innerducts in the order of pulling; empty if there is no innerduct to pull
 * @param warnings limits whose value to warn above is passed, though not the one to refuse above
 * @param assumptions what the calculation rests on, always in one order
 */
public record PullAssessment(
        PullOutcome outcome,
        Friction judgedBy,
        List<InnerductPull> pulls,
        Set<LimitKind> warnings,
        Set<PullAssumption> assumptions) {
    public PullAssessment {
        pulls = List.copyOf(pulls);
        warnings = ordered(warnings, LimitKind.class);
        assumptions = ordered(assumptions, PullAssumption.class);
    }

    public static PullAssessment nothing(Unrecoverable why) {
        return new PullAssessment(new PullOutcome.NothingToPull(why), Friction.DRY, List.of(), Set.of(), Set.of());
    }

    /** Returns the largest pull on any innerduct, 0 where there is none; steady. */
    public double largestPullN(SpanEnd pullingEnd, Friction friction) {
        return pulls.stream()
                .mapToDouble(pull -> pull.from(pullingEnd).forces(friction).pullN())
                .max()
                .orElse(0);
    }

    /** Returns the largest hold force on the cables of any innerduct, 0 where there is none; steady. */
    public double largestHoldN(SpanEnd pullingEnd, Friction friction) {
        return pulls.stream()
                .mapToDouble(pull -> pull.from(pullingEnd).forces(friction).holdN())
                .max()
                .orElse(0);
    }

    /** Returns how far the tightest limit is used up when pulling from the better end; 0 if there is no innerduct to pull. */
    public double utilizationPercent() {
        return outcome.findTightest().map(LimitUse::utilizationPercent).orElse(0.0);
    }

    /** Returns how far each limit is used by any innerduct in each state of friction. */
    public FrictionUse useByFriction(SpanEnd pullingEnd) {
        FrictionUse most = FrictionUse.NONE;
        for (InnerductPull pull : pulls) {
            most = most.max(pull.from(pullingEnd).use());
        }
        return most;
    }

    /** Returns every limit that any innerduct passes when it comes out at the better end. */
    public Set<LimitKind> failingLimits() {
        var failing = EnumSet.noneOf(LimitKind.class);
        outcome.findBetterEnd()
                .ifPresent(end ->
                        pulls.forEach(pull -> failing.addAll(pull.from(end).failing())));
        return failing;
    }

    private static <E extends Enum<E>> Set<E> ordered(Set<E> set, Class<E> type) {
        var copy = EnumSet.noneOf(type);
        copy.addAll(set);
        return Collections.unmodifiableSet(copy);
    }
}
