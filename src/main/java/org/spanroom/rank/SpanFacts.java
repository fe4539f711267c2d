package org.spanroom.rank;

import static java.util.stream.Collectors.joining;

import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Stream;
import org.spanroom.model.Answer;
import org.spanroom.model.Counted;
import org.spanroom.model.Term;
import org.spanroom.model.bore.Room;
import org.spanroom.model.network.Circumstances;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.FieldRecord;
import org.spanroom.model.network.RejectedValue;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.PullOutcome;
import org.spanroom.model.rank.Assessment;

/** All that a gate or a caution may look at: one span as assessed, the empty ducts beside it, and the rules of the run. */
record SpanFacts(Assessment assessment, EmptyDucts emptyDucts, Rules rules) {
    /**
     * What the owner rules.
     *
     * @param unknownConsentExcludes whether a consent that is not recorded is treated as one that is missing
     * @param oldCablesGetCells whether the cables that stay are laid into cells
     * @param enoughPositions a duct that has this many positions today needs no recovery; 0 for no such number
     * @param onDate the run date; empty where none is given, so that no embargo is treated as past
     */
    record Rules(
            boolean unknownConsentExcludes,
            boolean oldCablesGetCells,
            int enoughPositions,
            Optional<LocalDate> onDate) {
        boolean isInForce(LocalDate until) {
            return onDate.isEmpty() || !until.isBefore(onDate.get());
        }
    }

    private static final Term[] CONTENTS = {
        Term.INNERDUCT_COUNT,
        Term.CABLE_COUNT,
        Term.INNERDUCT_OUTSIDE_DIAMETER,
        Term.INNERDUCT_SDR,
        Term.INNERDUCT_WALL,
        Term.CABLE_OUTSIDE_DIAMETER,
        Term.CABLE_MASS
    };

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

    /** Returns whether an innerduct is there, or may be there for all that is known. */
    boolean mayHoldInnerduct() {
        return !contents().known() || !contents().innerducts().isEmpty();
    }

    /** Returns how many of the innerducts that come out run uncut through the vault at one end, as recorded. */
    int innerductsToCut(SpanEnd end) {
        return assessment
                .effort()
                .map(effort -> effort.quantities().at(end).innerductsToCut())
                .orElse(0);
    }

    /** Returns where innerducts must be cut, for people. */
    String cutsInWords() {
        return Stream.of(SpanEnd.values())
                .filter(end -> innerductsToCut(end) > 0)
                .map(end -> innerductsToCut(end) + " at " + end.vaultOf(span()).id())
                .collect(joining(", "));
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

    /** Returns how many positions there are today, everything left in; 0 where that is unknown. */
    int positionsNow() {
        return room().positionsNow().orElse(0);
    }

    /** Returns how many of them are beside rigid innerducts. */
    int besideNow() {
        return room().now()
                .map(now -> Math.min(now.positionsAfter(), now.positions().beside()))
                .orElse(0);
    }

    boolean hasEnoughNow() {
        return rules.enoughPositions() > 0 && positionsNow() >= rules.enoughPositions();
    }

    /** Returns an answer of the duct's records for people: one that was rejected was recorded anyway. */
    String words(Answer answer, Term term) {
        return answer == Answer.UNKNOWN ? unknown(duct().findRejected(term)) : answer.key();
    }

    /** Says of what is unknown whether it was not recorded, or recorded and rejected. */
    static String unknown(Optional<RejectedValue> rejected) {
        return rejected.map(RejectedValue::words).orElse("not recorded");
    }

    /** Says how far the work is, as crews reported it. */
    String statusWords() {
        FieldRecord reported = duct().fieldRecord();
        return reported.status()
                .map(status -> "reported as " + status.key().replace('_', ' ')
                        + reported.statusDay().map(day -> " on " + day).orElse(""))
                .orElse("no status of the work is reported");
    }

    /** Says why the work was stopped; empty where no reason is reported. */
    String stopReason() {
        String reason = duct().fieldRecord().statusReason();
        return reason.isBlank() ? "" : ": " + reason;
    }

    /** Says where the duct is blocked; empty where that is not reported. */
    String blockedWords() {
        FieldRecord reported = duct().fieldRecord();
        return reported.blockedAtM().isPresent()
                ? ", " + Counted.fixed(reported.blockedAtM().getAsDouble(), 1) + " m from " + reported.blockedFrom()
                : "";
    }

    /** Says why the contents are unknown. */
    String whyUnknown() {
        return duct().findRejected(CONTENTS)
                .or(() -> duct().rejected().stream()
                        .filter(RejectedValue::isContents)
                        .findFirst())
                .map(value -> value.name() + " is " + value.words())
                .orElse("the number of innerducts and cables in the duct is not recorded");
    }

    /** Returns whether the last day of an embargo is the run date, or a later one. */
    boolean isUnderEmbargo() {
        return recorded().embargoUntil().filter(rules::isInForce).isPresent();
    }

    /** Returns up to when an embargo applies, for people. */
    String embargoWords() {
        return recorded()
                .embargoUntil()
                .map(until -> "embargo until " + until + (rules.isInForce(until) ? "" : ", expired"))
                .orElse("no embargo is recorded");
    }
}
