package org.spanroom.rank;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.spanroom.model.Answer;
import org.spanroom.model.Assessment;
import org.spanroom.model.Cable;
import org.spanroom.model.Circumstances;
import org.spanroom.model.Condition;
import org.spanroom.model.Duct;
import org.spanroom.model.Exclusion;
import org.spanroom.model.GateAnswer;
import org.spanroom.model.PullOutcome;
import org.spanroom.model.RoomSettings;
import org.spanroom.model.ScoringSettings;
import org.spanroom.model.Service;

/**
 * Decides which reasons keep a span out of the ranking.
 *
 * <p>Every reason is asked, also after one holds. A reason that would follow from a more basic one is not told besides: where no
 * known innerduct can leave a duct, nothing is asked about pulling it and no room is missed.
 */
final class Gates {
    private final ScoringSettings settings;
    private final boolean oldCablesGetCells;

    Gates(ScoringSettings settings, RoomSettings room) {
        this.settings = settings;
        this.oldCablesGetCells = room.oldCablesNeedCells();
    }

    /** Returns every reason that holds, whether its gate is open or not. */
    Set<Exclusion> reasons(Assessment assessment, EmptyDucts emptyDucts) {
        var reasons = EnumSet.noneOf(Exclusion.class);
        for (Exclusion reason : Exclusion.values()) {
            if (holds(reason, assessment, emptyDucts)) {
                reasons.add(reason);
            }
        }
        return reasons;
    }

    /** Returns what each gate says, in the order of reasons. */
    List<GateAnswer> answers(Assessment assessment, EmptyDucts emptyDucts) {
        var answers = new ArrayList<GateAnswer>();
        var evidence = new Evidence(assessment, emptyDucts, oldCablesGetCells);
        for (Exclusion gate : Exclusion.values()) {
            answers.add(new GateAnswer(
                    gate, !settings.excludes(gate), holds(gate, assessment, emptyDucts), evidence.of(gate)));
        }
        return answers;
    }

    private boolean holds(Exclusion reason, Assessment assessment, EmptyDucts emptyDucts) {
        Duct duct = assessment.span().duct();
        return switch (reason) {
            case CONTENTS_UNKNOWN -> !duct.contents().known();
            case NO_INNERDUCT ->
                duct.contents().known() && duct.contents().innerducts().isEmpty();
            case NO_OUTER_DUCT -> duct.directBuried();
            case DUCT_COLLAPSED -> duct.condition() == Condition.COLLAPSED;
            case DUCT_BLOCKED -> duct.condition() == Condition.BLOCKED;
            case OWNER_CONSENT_MISSING -> consentIsMissing(duct.circumstances());
            case PULL_FAILS -> assessment.pull().outcome() instanceof PullOutcome.FromNeither;
            case NO_CABLE_HOLD -> WorkingEnd.isMissing(assessment);
            case NO_ROOM_GAINED -> canLeave(duct) && assessment.room().cablesGained() == 0;
            case EMPTY_DUCT_IN_BANK ->
                canLeave(duct) && emptyDucts.findProved(assessment.span()).isPresent();
            case INNERDUCT_FIXED, SPLICE_INSIDE, SERVICE_UNKNOWN, ALL_CABLES_DEAD, LOOSE_CABLE_FORBIDDEN ->
                !isKnownToHoldNone(duct) && holdsOfContents(reason, duct);
        };
    }

    /** Reasons that do not matter where it is known that no innerduct lies there. */
    private boolean holdsOfContents(Exclusion reason, Duct duct) {
        Circumstances recorded = duct.circumstances();
        return switch (reason) {
            case INNERDUCT_FIXED -> recorded.innerductFixed() == Answer.YES;
            case SPLICE_INSIDE -> recorded.spliceInside() == Answer.YES;
            case LOOSE_CABLE_FORBIDDEN -> recorded.looseCableAllowed() == Answer.NO && !oldCablesGetCells;
            case SERVICE_UNKNOWN -> hasService(duct, Service.UNKNOWN);
            case ALL_CABLES_DEAD ->
                hasService(duct, Service.DEAD) && !hasService(duct, Service.LIVE) && !hasService(duct, Service.UNKNOWN);
            default -> throw new IllegalArgumentException(reason.key());
        };
    }

    private boolean consentIsMissing(Circumstances recorded) {
        return recorded.ownerConsent() == Answer.NO
                || (recorded.ownerConsent() == Answer.UNKNOWN && settings.unknownConsentExcludes());
    }

    private static boolean canLeave(Duct duct) {
        return !duct.directBuried() && !duct.contents().innerducts().isEmpty();
    }

    private static boolean isKnownToHoldNone(Duct duct) {
        return duct.contents().known() && duct.contents().innerducts().isEmpty();
    }

    private static boolean hasService(Duct duct, Service service) {
        for (Cable cable : duct.contents().cables()) {
            if (cable.service() == service) {
                return true;
            }
        }
        return false;
    }
}
