package org.spanroom.rank;

import java.util.Optional;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Vault;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.FrictionUse;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.PullOutcome;
import org.spanroom.model.rank.Assessment;

/**
 * The end that innerducts come out at once it is known where a live cable can be held.
 *
 * <p>An innerduct that comes out at one end needs its cable held at the other. Where the better end's anchor is recorded to hold
 * none, the other end serves, unless the forces let innerducts out at the better end only. Where no innerduct holds a cable
 * there is nothing to hold.
 */
final class WorkingEnd {
    private WorkingEnd() {}

    /** Finds the end to work from; empty if there is no innerduct to pull, or where no anchor that could serve holds a cable. */
    static Optional<SpanEnd> find(Assessment assessment) {
        PullOutcome outcome = assessment.pull().outcome();
        Optional<SpanEnd> better = outcome.findBetterEnd();
        if (better.isEmpty() || hasHold(assessment, better.get())) {
            return better;
        }
        SpanEnd other = better.get().opposite();
        boolean mayServe = !(outcome instanceof PullOutcome.FromOne) && hasHold(assessment, other);
        return mayServe ? Optional.of(other) : Optional.empty();
    }

    /** Returns whether there is an innerduct to pull and the cables can be held for neither end that could serve. */
    static boolean isMissing(Assessment assessment) {
        return assessment.pull().outcome().findBetterEnd().isPresent()
                && find(assessment).isEmpty();
    }

    /** Returns whether another end than the better one must serve. */
    static boolean isOther(Assessment assessment) {
        Optional<SpanEnd> end = find(assessment);
        return end.isPresent() && !end.equals(assessment.pull().outcome().findBetterEnd());
    }

    /** Returns how far the tightest limit is used up from the end to work from, in percent; 0 if there is no innerduct to pull. */
    static double utilizationPercent(Assessment assessment) {
        if (!isOther(assessment)) {
            return assessment.pull().utilizationPercent();
        }
        double mostPercent = 0;
        for (InnerductPull pull : assessment.pull().pulls()) {
            double percent =
                    pull.from(find(assessment).orElseThrow()).tightest().utilizationPercent();
            mostPercent = Math.max(mostPercent, percent);
        }
        return mostPercent;
    }

    /** Returns how far each limit is used from the end to work from, in each state of friction. */
    static FrictionUse useByFriction(Assessment assessment) {
        Optional<SpanEnd> end =
                find(assessment).or(() -> assessment.pull().outcome().findBetterEnd());
        return assessment.pull().useByFriction(end.orElse(SpanEnd.A));
    }

    /**
     * Returns whether a limit that may exclude fails at every end that could serve, in a state of friction; where the cables can be held
     * for neither end both count.
     */
    static boolean failsEverywhere(Assessment assessment, Friction state) {
        boolean noHold = !hasHold(assessment, SpanEnd.A) && !hasHold(assessment, SpanEnd.B);
        for (SpanEnd end : SpanEnd.values()) {
            boolean serves = noHold || hasHold(assessment, end);
            if (serves && !assessment.pull().useByFriction(end).isExcluding(state)) {
                return false;
            }
        }
        return true;
    }

    /** Returns where the cables would be held, for people. */
    static String words(Assessment assessment) {
        Optional<SpanEnd> better = assessment.pull().outcome().findBetterEnd();
        if (better.isEmpty()) {
            return "no innerduct to pull";
        }
        if (holdsNoCable(assessment)) {
            return "no innerduct contains a cable";
        }
        return find(assessment)
                .map(end -> "pulled from " + end + ", held at " + holdAt(end.opposite(), assessment))
                .orElseGet(() -> "from " + better.get() + " it would be held at "
                        + holdAt(better.get().opposite(), assessment) + "; the other end is not usable");
    }

    private static String holdAt(SpanEnd anchor, Assessment assessment) {
        Vault vault = anchor.vaultOf(assessment.span());
        Answer hold = vault.site().cableHold();
        String words = hold == Answer.UNKNOWN ? SpanFacts.unknown(vault.findRejected(Term.CABLE_HOLD)) : hold.key();
        return vault.id() + " (" + words + ")";
    }

    private static boolean holdsNoCable(Assessment assessment) {
        return assessment.span().duct().contents().innerducts().stream().allMatch(Innerduct::isEmpty);
    }

    private static boolean hasHold(Assessment assessment, SpanEnd pullingEnd) {
        Answer hold = pullingEnd.opposite().vaultOf(assessment.span()).site().cableHold();
        return hold != Answer.NO || holdsNoCable(assessment);
    }
}
