package org.spanroom.output;

import static org.spanroom.output.ExplanationItem.flag;
import static org.spanroom.output.ExplanationItem.number;
import static org.spanroom.output.ExplanationItem.text;
import static org.spanroom.output.ExplanationItem.whole;
import static org.spanroom.output.ExplanationItem.word;
import static org.spanroom.output.ExplanationItem.words;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.spanroom.model.Permits;
import org.spanroom.model.Stretch;
import org.spanroom.model.ZoneTouch;

/** The permit zones that a span touches, what recovering needs there, and what a new build would need in addition. */
final class ExplanationPermits {
    private ExplanationPermits() {}

    /** Returns the permits; where no zones were read, people are shown none. */
    static ExplanationSection of(Permits permits) {
        return new ExplanationSection(
                "permits",
                permits.equals(Permits.NONE) ? "" : "Permits",
                List.of(
                        whole("", "zones touched", permits.touches().size()),
                        ExplanationTable.of("zones", "zone", permits.touches(), ExplanationPermits::zone),
                        number("zone_any_m", "inside zones", permits.lengthM(), 3, "m"),
                        words("recovery_needs", "recovering needs", permits.recoveryNeeds()),
                        words("permits_avoided", "a new build in addition", permits.avoided()),
                        flag("night_only", "at night only", permits.nightOnly()),
                        number("cut_banned_m", "no new trench on", permits.cutBannedM(), 3, "m"),
                        word("cut_banned_until", "banned until", PermitColumns.until(permits)),
                        whole("recovery_lead_days", "days for these permits", permits.recoveryLeadDays()),
                        whole("new_build_lead_days", "days for a new build's", permits.newBuildLeadDays())));
    }

    private static List<ExplanationPart> zone(ZoneTouch touch) {
        String vaults = PermitRow.vaults(touch);
        return List.of(
                text("zone_id", "zone", touch.zone().id()),
                word("kind", "kind", touch.zone().kind()),
                text("name", "name", touch.zone().name()),
                text(
                        "until",
                        "until",
                        touch.zone().until().map(LocalDate::toString).orElse("")),
                number("length_m", "inside it", touch.lengthM(), 3, "m"),
                new ExplanationItem("at_vault", "vaults in it", vaults(vaults)),
                ExplanationTable.of("stretches", "stretches", touch.stretches(), ExplanationPermits::stretch),
                words("recovery_needs", "recovering needs", touch.recoveryNeeds()),
                words("new_build_needs", "a new build needs", touch.rule().newBuild()));
    }

    private static ExplanationValue vaults(String ends) {
        return ends.isEmpty()
                ? ExplanationValue.ABSENT
                : new ExplanationValue.Word(ends, ends.toUpperCase(Locale.ROOT).replace(";", " and "));
    }

    private static List<ExplanationPart> stretch(Stretch stretch) {
        return List.of(number("from_m", "from", stretch.fromM(), 3, "m"), number("to_m", "to", stretch.toM(), 3, "m"));
    }
}
