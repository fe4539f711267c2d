package org.spanroom.rank;

import java.util.Locale;
import java.util.function.Function;
import java.util.function.Predicate;
import org.spanroom.model.Answer;
import org.spanroom.model.Counted;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.rank.Exclusion;

/**
 * A gate: the reason that keeps a span out of the ranking, when it applies, and the basis of that answer. The lower-case name is the
 * reason's word in columns and the key of its switch in {@code config/scoring.yaml}, which says whether the gate is shut.
 *
 * <p>The order is that in which reasons are given: first that the work is done or under way, then that nothing is there to recover,
 * then that it cannot be done, then that it may not be done, then that it need not be done or gives nothing. A reason that would follow from a more basic one does not
 * apply: where no known innerduct can leave a duct, nothing is asked about pulling it and no room is missed.
 */
@SuppressWarnings("ImmutableEnumChecker") // Its records are immutable and its functions have no state.
enum Gate {
    WORK_DONE(
            "recovery of this span is done",
            span -> span.duct().fieldRecord().is(WorkStatus.DONE),
            SpanFacts::statusWords),
    IN_WORK(
            "recovery of this span is under way",
            span -> span.duct().fieldRecord().is(WorkStatus.IN_WORK),
            SpanFacts::statusWords),
    CONTENTS_UNKNOWN(
            Unrecoverable.CONTENTS_UNKNOWN.explanation(),
            span -> !span.contents().known(),
            span -> span.contents().known() ? "the contents are known" : span.whyUnknown()),
    NO_INNERDUCT(
            Unrecoverable.NO_INNERDUCT.explanation(),
            span -> !span.mayHoldInnerduct(),
            span -> span.contents().known()
                    ? count(span.contents().innerducts().size(), "innerduct")
                    : "the contents are unknown"),
    NO_OUTER_DUCT(
            Unrecoverable.NO_OUTER_DUCT.explanation(),
            span -> span.duct().directBuried(),
            span -> span.duct().directBuried() ? "recorded as direct-buried" : "not recorded as direct-buried"),
    LOOP(
            "the span begins and ends at the same vault; check for a duplicate or missing vault",
            span -> span.span().from().id().equals(span.span().to().id()),
            span -> span.span().from().id() + " to " + span.span().to().id()),
    DUCT_COLLAPSED(
            "duct recorded as collapsed", span -> span.duct().condition() == Condition.COLLAPSED, Gate::condition),
    DUCT_BLOCKED("duct recorded as blocked", span -> span.duct().condition() == Condition.BLOCKED, Gate::condition),
    INNERDUCT_FIXED(
            "innerduct grouted in or otherwise fixed along its length",
            span -> span.mayHoldInnerduct() && span.recorded().innerductFixed() == Answer.YES,
            span -> span.words(span.recorded().innerductFixed(), Term.INNERDUCT_FIXED)),
    SPLICE_INSIDE(
            "mid-span splice; innerduct cannot pass it",
            span -> span.mayHoldInnerduct() && span.recorded().spliceInside() == Answer.YES,
            span -> span.words(span.recorded().spliceInside(), Term.SPLICE_INSIDE)),
    NO_CABLE_HOLD(
            "live cable cannot be restrained at the anchor vault",
            span -> WorkingEnd.isMissing(span.assessment()),
            span -> WorkingEnd.words(span.assessment())),
    SERVICE_UNKNOWN(
            "cable service status unknown (live or dead)",
            span -> span.mayHoldInnerduct() && span.hasCable(Service.UNKNOWN),
            span -> Services.words(span.contents().cables())),
    ALL_CABLES_DEAD(
            "all cables recorded as dead; remove them first, then the innerducts are scrap",
            span -> span.mayHoldInnerduct()
                    && span.hasCable(Service.DEAD)
                    && !span.hasCable(Service.LIVE)
                    && !span.hasCable(Service.UNKNOWN),
            span -> Services.words(span.contents().cables())),
    OWNER_CONSENT_MISSING(
            "owner or joint owner has not consented",
            span -> span.recorded().ownerConsent() == Answer.NO
                    || (span.recorded().ownerConsent() == Answer.UNKNOWN
                            && span.rules().unknownConsentExcludes()),
            span -> "consent: " + span.words(span.recorded().ownerConsent(), Term.OWNER_CONSENT)),
    LOOSE_CABLE_FORBIDDEN(
            "owner requires all cable in innerduct",
            span -> span.mayHoldInnerduct()
                    && span.recorded().looseCableAllowed() == Answer.NO
                    && !span.rules().oldCablesGetCells(),
            span -> "loose cable allowed: " + span.words(span.recorded().looseCableAllowed(), Term.LOOSE_CABLE_ALLOWED)
                    + (span.rules().oldCablesGetCells()
                            ? "; the old cables go into cells"
                            : "; the old cables stay loose")),
    EMBARGO("embargo on work that disturbs the cables", SpanFacts::isUnderEmbargo, SpanFacts::embargoWords),
    EMPTY_DUCT_IN_BANK(
            "sound empty duct available in the same bank; use it first",
            span -> span.canLeave() && span.emptyDucts().findProved(span.span()).isPresent(),
            span -> span.emptyDucts().words(span.span())),
    ROOM_WITHOUT_RECOVERY(
            "the duct takes enough cables today with everything left in; no recovery needed",
            span -> span.canLeave() && span.hasEnoughNow(),
            span -> count(span.positionsNow(), "position") + " today; "
                    + (span.rules().enoughPositions() == 0
                            ? "room.enough_positions is 0, so this gate does not apply"
                            : "sufficient from " + span.rules().enoughPositions())),
    PULL_FAILS(
            "pull fails from both ends, even well lubricated",
            span -> span.failsPull(Friction.LUBRICATED),
            span -> span.assessment().pull().outcome().summary()),
    NO_ROOM_GAINED(
            "recovery adds no cable position",
            span -> span.canLeave() && !span.room().gains(),
            Gate::gained);

    private final Exclusion exclusion;
    private final Predicate<SpanFacts> condition;
    private final Function<SpanFacts, String> evidence;

    @SuppressWarnings("EnumOrdinal") // the order of reasons is that of the gates
    Gate(String explanation, Predicate<SpanFacts> condition, Function<SpanFacts, String> evidence) {
        this.exclusion = new Exclusion(ordinal(), name().toLowerCase(Locale.ROOT), explanation);
        this.condition = condition;
        this.evidence = evidence;
    }

    /** Returns the reason for which this gate excludes. */
    Exclusion exclusion() {
        return exclusion;
    }

    String key() {
        return exclusion.key();
    }

    /** Returns whether the reason applies to a span, whether the gate is on or off. */
    boolean holds(SpanFacts span) {
        return condition.test(span);
    }

    /** Returns what the answer rests on, in one phrase for people. */
    String evidence(SpanFacts span) {
        return evidence.apply(span);
    }

    private static String gained(SpanFacts span) {
        return span.room()
                .then()
                .map(choice -> count(choice.positionsNow(), "position") + " today, "
                        + count(choice.positionsAfter(), "position") + " after")
                .orElse(
                        span.contents().known()
                                ? "unknown because the duct holds more than a cross-section is calculated for"
                                : "unknown because the contents are unknown");
    }

    private static String condition(SpanFacts span) {
        Condition condition = span.duct().condition();
        return condition == Condition.UNKNOWN
                ? "the condition is " + SpanFacts.unknown(span.duct().findRejected(Term.CONDITION))
                : "recorded as " + condition.name().toLowerCase(Locale.ROOT) + span.blockedWords();
    }

    private static String count(int number, String thing) {
        return Counted.of(number, thing);
    }
}
