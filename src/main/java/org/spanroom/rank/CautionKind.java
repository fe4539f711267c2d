package org.spanroom.rank;

import java.util.Collections;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.permit.ZoneRule;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.rank.Caution;

/**
 * A caution: its words, and when it is given. The lower-case name is its word in columns; cautions are listed in this order.
 */
@SuppressWarnings("ImmutableEnumChecker") // Its records are immutable and its functions have no state.
enum CautionKind {
    WORK_STOPPED(
            "work on this span was stopped",
            span -> span.duct().fieldRecord().is(WorkStatus.STOPPED),
            SpanFacts::stopReason),
    CONSENT_UNRECORDED(
            "consent of the owner and joint owners not recorded; get it in writing",
            span -> span.recorded().ownerConsent() == Answer.UNKNOWN
                    && !span.rules().unknownConsentExcludes()),
    LOOSE_CABLE_UNRECORDED(
            "owner's rule on cable without innerduct not recorded; ask the owner",
            span -> span.mayHoldInnerduct()
                    && span.recorded().looseCableAllowed() == Answer.UNKNOWN
                    && !span.rules().oldCablesGetCells()),
    CIRCUITS_AT_RISK(
            "live circuits at risk",
            span -> span.recorded().circuitsAtRisk().orElse(0) > 0,
            span -> ": " + span.recorded().circuitsAtRisk().orElse(0)),
    JOINT_OWNERS(
            "joint owners must consent",
            span -> !span.recorded().jointOwners().isBlank(),
            span -> ": " + span.recorded().jointOwners()),
    CONTENTS_CANNOT_FIT(
            "the recorded contents cannot fit the recorded bore; a record is wrong",
            span -> span.room().findContradiction().isPresent()),
    PULL_FROM_OTHER_END(
            "live cable cannot be restrained for the better end; pull from the other end, with its forces",
            span -> WorkingEnd.isOther(span.assessment())),
    PULL_DOUBTFUL(
            "the pull fails at both ends unless well lubricated",
            span -> span.failsPull(span.assessment().pull().judgedBy()) && !span.failsPull(Friction.LUBRICATED)),
    INNERDUCT_RADIUS(
            "an innerduct must pass a bend tighter than its minimum radius from either end; it may kink",
            span -> span.isPullDoubtful()
                    && !span.failsPull(span.assessment().pull().judgedBy())),
    BAD_FRICTION("the pull may fail if friction is bad", CautionKind::badFrictionStops),
    MAY_JAM(
            "three equal innerducts may jam side by side (jam ratio 2.8 to 3.2)",
            span -> span.canLeave()
                    && span.room().crossSection().filter(CrossSection::mayJam).isPresent()),
    POSITIONS_BESIDE_NOW(
            "room for cables beside the innerducts today, without recovery",
            span -> span.canLeave() && span.besideNow() > 0 && !span.hasEnoughNow(),
            span -> ": " + span.besideNow()),
    INNERDUCT_UNCUT(
            "innerduct runs uncut through a vault; cut it there first, around live cables",
            span -> span.innerductsToCut(SpanEnd.A) + span.innerductsToCut(SpanEnd.B) > 0,
            span -> ": " + span.cutsInWords()),
    MANY_BENDS("total bends exceed the warning limit", span -> warns(span, LimitKind.TOTAL_BENDS)),
    LONG_SECTION("span longer than the warning length", span -> warns(span, LimitKind.SECTION_LENGTH)),
    WATER(
            "flooded duct, or standing water in a vault",
            span -> span.duct().flooded()
                    || span.span().from().site().water() == Answer.YES
                    || span.span().to().site().water() == Answer.YES),
    NIGHT_ONLY("night work only", span -> span.assessment().permits().isUnder(ZoneRule.NIGHT_ONLY)),
    EMPTY_DUCT_UNPROVED(
            "empty duct of unrecorded or oval bore in the same bank; inspect it first",
            span -> span.emptyDucts().findUnproved(span.span()).isPresent()),
    CONTENTS_ASSUMED(
            "number of innerducts or cables, or their service status, assumed",
            assumed(Term.INNERDUCT_COUNT, Term.CABLE_COUNT, Term.IN_SERVICE)),
    SIZES_ASSUMED(
            "duct, innerduct or cable size assumed",
            assumed(
                    Term.INSIDE_DIAMETER,
                    Term.INNERDUCT_OUTSIDE_DIAMETER,
                    Term.INNERDUCT_SDR,
                    Term.CABLE_OUTSIDE_DIAMETER,
                    Term.CABLE_MASS));

    private final Caution caution;
    private final Predicate<SpanFacts> condition;
    private final Function<SpanFacts, String> detail;

    CautionKind(String explanation, Predicate<SpanFacts> condition) {
        this(explanation, condition, span -> "");
    }

    /** @param detail what is recorded, to follow the explanation; asked only where the caution is given */
    CautionKind(String explanation, Predicate<SpanFacts> condition, Function<SpanFacts, String> detail) {
        this.caution = new Caution(name().toLowerCase(Locale.ROOT), explanation);
        this.condition = condition;
        this.detail = detail;
    }

    String key() {
        return caution.key();
    }

    boolean holds(SpanFacts span) {
        return condition.test(span);
    }

    /** Returns the caution without what is recorded of a span. */
    Caution caution() {
        return caution;
    }

    /** Returns the caution as it is given for a span. */
    Caution caution(SpanFacts span) {
        String recorded = detail.apply(span);
        return recorded.isEmpty() ? caution : new Caution(key(), caution.explanation() + recorded);
    }

    private static Predicate<SpanFacts> assumed(Term... terms) {
        Set<Term> wanted = Set.of(terms);
        return span -> !Collections.disjoint(span.duct().assumed(), wanted);
    }

    private static boolean warns(SpanFacts span, LimitKind limit) {
        return span.assessment().pull().warnings().contains(limit);
    }

    private static boolean badFrictionStops(SpanFacts span) {
        PullAssessment pull = span.assessment().pull();
        return pull.outcome().isPossible()
                && WorkingEnd.find(span.assessment())
                        .filter(end -> badFrictionStops(pull, end))
                        .isPresent();
    }

    private static boolean badFrictionStops(PullAssessment pull, SpanEnd end) {
        for (InnerductPull one : pull.pulls()) {
            if (one.from(end).use().mostRatio(Friction.BAD) > 1) {
                return true;
            }
        }
        return false;
    }
}
