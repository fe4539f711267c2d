package org.spanroom.rank;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.spanroom.model.Answer;
import org.spanroom.model.Assessment;
import org.spanroom.model.Cable;
import org.spanroom.model.Circumstances;
import org.spanroom.model.Condition;
import org.spanroom.model.Duct;
import org.spanroom.model.Exclusion;
import org.spanroom.model.Room;
import org.spanroom.model.Service;
import org.spanroom.model.SpanEnd;

/** What the answer of each gate rests on, in one phrase for people. */
final class Evidence {
    private final Assessment assessment;
    private final Duct duct;
    private final EmptyDucts emptyDucts;
    private final boolean oldCablesGetCells;

    Evidence(Assessment assessment, EmptyDucts emptyDucts, boolean oldCablesGetCells) {
        this.assessment = assessment;
        this.duct = assessment.span().duct();
        this.emptyDucts = emptyDucts;
        this.oldCablesGetCells = oldCablesGetCells;
    }

    String of(Exclusion gate) {
        Circumstances recorded = duct.circumstances();
        return switch (gate) {
            case CONTENTS_UNKNOWN -> duct.contents().known() ? "the contents are known" : gate.explanation();
            case NO_INNERDUCT -> count(duct.contents().innerducts().size(), "innerduct");
            case NO_OUTER_DUCT ->
                duct.directBuried() ? "recorded as buried directly" : "not recorded as buried directly";
            case DUCT_COLLAPSED, DUCT_BLOCKED -> condition();
            case INNERDUCT_FIXED -> answer(recorded.innerductFixed());
            case SPLICE_INSIDE -> answer(recorded.spliceInside());
            case NO_CABLE_HOLD -> hold();
            case SERVICE_UNKNOWN, ALL_CABLES_DEAD -> services();
            case OWNER_CONSENT_MISSING -> "consent: " + answer(recorded.ownerConsent());
            case LOOSE_CABLE_FORBIDDEN -> looseCable(recorded.looseCableAllowed());
            case EMPTY_DUCT_IN_BANK -> emptyDuct();
            case PULL_FAILS -> assessment.pull().outcome().summary();
            case NO_ROOM_GAINED -> room(assessment.room());
        };
    }

    private String condition() {
        return duct.condition() == Condition.UNKNOWN
                ? "the condition is not recorded"
                : "recorded as " + duct.condition().name().toLowerCase(Locale.ROOT);
    }

    private String hold() {
        Optional<SpanEnd> better = assessment.pull().outcome().findBetterEnd();
        if (better.isEmpty()) {
            return "nothing is to pull";
        }
        if (duct.contents().innerducts().stream().allMatch(innerduct -> innerduct.isEmpty())) {
            return "no innerduct holds a cable";
        }
        return WorkingEnd.find(assessment)
                .map(end -> "worked from " + end + ", held at " + holdAt(end.opposite()))
                .orElseGet(() -> "from " + better.get() + " it would be held at "
                        + holdAt(better.get().opposite()) + "; the other end does not serve");
    }

    private String holdAt(SpanEnd anchor) {
        var vault = anchor.vaultOf(assessment.span());
        return vault.id() + " (" + answer(vault.site().cableHold()) + ")";
    }

    private String services() {
        List<Cable> cables = duct.contents().cables();
        if (cables.isEmpty()) {
            return "no cable is known";
        }
        return cables.size() + " cables: " + countOf(cables, Service.LIVE) + " live, " + countOf(cables, Service.DEAD)
                + " dead, " + countOf(cables, Service.UNKNOWN) + " unknown";
    }

    private static long countOf(List<Cable> cables, Service service) {
        return cables.stream().filter(cable -> cable.service() == service).count();
    }

    private String looseCable(Answer allowed) {
        return "loose cable allowed: " + answer(allowed)
                + (oldCablesGetCells ? "; the old cables go into cells" : "; the old cables stay loose");
    }

    private String emptyDuct() {
        return emptyDucts
                .findProved(assessment.span())
                .map(name -> "duct " + name + " is empty and sound")
                .or(() -> emptyDucts
                        .findUnproved(assessment.span())
                        .map(name -> "duct " + name + " is empty, but nobody recorded it as sound"))
                .orElse("none is known there");
    }

    private static String room(Room room) {
        return count(room.cablesGained(), "place") + " more for a cable";
    }

    private static String count(int number, String thing) {
        return number == 1 ? "1 " + thing : number + " " + thing + "s";
    }

    private static String answer(Answer answer) {
        return answer == Answer.UNKNOWN ? "not recorded" : answer.key();
    }
}
