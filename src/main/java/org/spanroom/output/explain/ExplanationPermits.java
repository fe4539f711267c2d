package org.spanroom.output.explain;

import static org.spanroom.output.explain.ExplanationItem.flag;
import static org.spanroom.output.explain.ExplanationItem.number;
import static org.spanroom.output.explain.ExplanationItem.text;
import static org.spanroom.output.explain.ExplanationItem.whole;
import static org.spanroom.output.explain.ExplanationItem.word;
import static org.spanroom.output.explain.ExplanationItem.words;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.Stretch;
import org.spanroom.model.permit.ZoneRule;
import org.spanroom.model.permit.ZoneTouch;
import org.spanroom.output.columns.PermitColumns;
import org.spanroom.output.columns.PermitRow;

/** The permit zones that a span touches, what recovering needs there, and what a new build would need in addition. */
final class ExplanationPermits {
    private ExplanationPermits() {}

    /** Returns the permits; where no zones were read, people are shown none. */
    static ExplanationSection of(Permits permits) {
        var parts = new ArrayList<ExplanationPart>(List.of(
                whole("", "zones touched", permits.touches().size()),
                ExplanationTable.of("zones", "zone", permits.touches(), ExplanationPermits::zone),
                number("zone_any_m", "inside zones", permits.lengthM(), 3, "m"),
                words("recovery_needs", "recovering needs", permits.recoveryNeeds()),
                words("permits_avoided", "a new build in addition", permits.avoided())));
        ZoneRule.vaultsFirst().forEach(rule -> parts.addAll(under(rule, permits)));
        parts.add(whole("recovery_lead_days", "days for these permits", permits.recoveryLeadDays()));
        parts.add(whole("new_build_lead_days", "days for a new build's", permits.newBuildLeadDays()));
        return new ExplanationSection("permits", permits.equals(Permits.NONE) ? "" : "Permits", parts);
    }

    /** Returns what a rule of zones means for the span: figures for programs, and words for people where it applies. */
    private static List<ExplanationPart> under(ZoneRule rule, Permits permits) {
        var parts = new ArrayList<ExplanationPart>();
        String column = rule.shown().column();
        if (rule.reach() == ZoneRule.Reach.AT_VAULTS) {
            parts.add(flag(column, "", permits.isUnder(rule)));
        } else {
            parts.add(number(column + "_m", "", PermitColumns.metres(permits, rule), 3, "m"));
            parts.add(text(column + "_until", "", PermitColumns.until(permits, rule)));
        }
        permits.findPart(rule).ifPresent(part -> parts.add(text("", rule.shown().label(), rule.words(part))));
        return parts;
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
