package org.spanroom.output.explain;

import java.time.LocalDate;
import java.util.Locale;
import java.util.function.Function;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.ZoneRule;
import org.spanroom.model.permit.ZoneTouch;
import org.spanroom.output.columns.PermitColumns;
import org.spanroom.output.columns.PermitRow;

/** The permit zones that a span touches, what recovering needs there, and what a new build would need in addition. */
final class ExplanationPermits {
    private ExplanationPermits() {}

    /** Returns the permits; where no zones were read, people are shown none. */
    static ExplanationSection of(Permits permits, UnitSystem units) {
        var parts = new ExplanationParts()
                .whole("", "zones touched", permits.touches().size())
                .table("zones", "zone", permits.touches(), ExplanationPermits::zone)
                .table("zones_to_come", "upcoming zone", permits.toCome(), ExplanationPermits::zone)
                .number("zone_any_m", "inside zones", permits.lengthM(), 3, "m")
                .words("recovery_needs", "recovery needs", permits.recoveryNeeds(), Function.identity())
                .words(
                        "issued_by_crew",
                        "of these, the crew's entry supervisor issues on the day",
                        permits.recoveryIssuedByCrew(),
                        Function.identity())
                .words("permits_avoided", "additional for a new build", permits.avoided(), Function.identity());
        ZoneRule.vaultsFirst().forEach(rule -> under(parts, rule, permits, units));
        return parts.whole("recovery_lead_days", "lead time for recovery permits, days", permits.recoveryLeadDays())
                .whole("new_build_lead_days", "lead time for new-build permits, days", permits.newBuildLeadDays())
                .section("permits", permits.equals(Permits.NONE) ? "" : "Permits");
    }

    /** Adds what a rule of zones means for the span: figures for programs, and words for people where it applies. */
    private static void under(ExplanationParts parts, ZoneRule rule, Permits permits, UnitSystem units) {
        String column = rule.shown().column();
        if (rule.reach() == ZoneRule.Reach.AT_VAULTS) {
            parts.flag(column, "", permits.isUnder(rule));
        } else {
            parts.number(column + "_m", "", PermitColumns.meters(permits, rule), 3, "m")
                    .text(column + "_until", "", PermitColumns.until(permits, rule));
        }
        permits.findPart(rule).ifPresent(part -> parts.text("", rule.shown().label(), rule.words(part, units)));
    }

    private static void zone(ExplanationParts row, ZoneTouch touch) {
        String vaults = PermitRow.vaults(touch);
        row.text("zone_id", "zone", touch.zone().id())
                .word("kind", "kind", touch.zone().kind())
                .text("name", "name", touch.zone().name())
                .text(
                        "first_day",
                        "from",
                        touch.zone().from().map(LocalDate::toString).orElse(""))
                .text(
                        "until",
                        "until",
                        touch.zone().until().map(LocalDate::toString).orElse(""))
                .number("length_m", "inside it", touch.lengthM(), 3, "m")
                .text("at_vault", "", vaults)
                .text("", "vaults in it", vaults.toUpperCase(Locale.ROOT).replace(";", " and "))
                .table(
                        "stretches",
                        "stretches",
                        touch.stretches(),
                        (part, stretch) -> part.number("from_m", "from", stretch.fromM(), 3, "m")
                                .number("to_m", "to", stretch.toM(), 3, "m"))
                .words("recovery_needs", "recovery needs", touch.recoveryNeeds(), Function.identity())
                .words("new_build_needs", "a new build needs", touch.rule().newBuild(), Function.identity());
    }
}
