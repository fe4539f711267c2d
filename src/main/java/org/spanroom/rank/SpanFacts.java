package org.spanroom.rank;

import java.time.LocalDate;
import java.util.Optional;
import org.spanroom.model.Answer;
import org.spanroom.model.bore.Room;
import org.spanroom.model.network.Circumstances;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.PullOutcome;
import org.spanroom.model.rank.Assessment;

/** All that a gate or a caution may look at: one span as assessed, the empty ducts beside it, and the rules of the run. */
record SpanFacts(Assessment assessment, EmptyDucts emptyDucts, Rules rules) {
    /**
     * What the owner rules.
     *
     * @param unknownConsentExcludes whether a consent that is not recorded counts as one that is missing
     * @param oldCablesGetCells whether the cables that stay are laid into cells
     * @param onDate the day that the run is made for; empty where none is given, so that no embargo counts as past
     */
    record Rules(boolean unknownConsentExcludes, boolean oldCablesGetCells, Optional<LocalDate> onDate) {
        boolean isToCome(LocalDate until) {
            return onDate.isEmpty() || !until.isBefore(onDate.get());
        }
    }

    Span span() {
        return assessment.span();
    }

    Duct duct() {
        return span().duct();
    }

    Contents contents() {
        return duct().contents();
    }

    Circumstances recorded() {
        return duct().circumstances();
    }

    Room room() {
        return assessment.room();
    }

    /** Returns whether a known innerduct can leave the duct. */
    boolean canLeave() {
        return Unrecoverable.of(duct()).isEmpty();
    }

    /** Returns whether an innerduct lies there, or may lie there for all that is known. */
    boolean mayHoldInnerduct() {
        return !contents().known() || !contents().innerducts().isEmpty();
    }

    boolean hasCable(Service service) {
        return Services.has(contents(), service);
    }

    /** Returns whether on paper the innerducts can come out at neither end, in the state of friction that pulls are judged by. */
    boolean isPullDoubtful() {
        return assessment.pull().outcome() instanceof PullOutcome.FromNeither;
    }

    /** Returns whether that is so in a state of friction too, by limits that may exclude. */
    boolean failsPull(Friction state) {
        return isPullDoubtful() && WorkingEnd.failsEverywhere(assessment, state);
    }

    /** Returns an answer of the records for people. */
    static String words(Answer answer) {
        return answer == Answer.UNKNOWN ? "not recorded" : answer.key();
    }
}
