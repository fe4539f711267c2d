package org.spanroom.output;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.spanroom.model.Permits;
import org.spanroom.model.Reckoning;
import org.spanroom.model.ZoneRule;
import org.spanroom.model.ZoneTouch;

/** The permits of one span's reckoning, as text: zones touched, what recovering needs, what a new build would need besides. */
final class PermitText {
    private final Permits permits;
    private final TextPage page;

    PermitText(Reckoning reckoning, TextPage page) {
        this.permits = reckoning.ranked().assessment().permits();
        this.page = page;
    }

    /** Writes nothing where no zones were read. */
    void write() {
        if (permits.equals(Permits.NONE)) {
            return;
        }
        page.gap();
        page.line(
                "Permits: %d zones touched, %.2f m inside them",
                permits.touches().size(), permits.lengthM());
        permits.touches().forEach(this::zone);
        page.item("needs", "%s; they take %d days", words(permits.recoveryNeeds()), permits.recoveryLeadDays());
        page.item(
                "avoids",
                "%s; a new build would wait %d days for its permits",
                words(permits.avoided()),
                permits.newBuildLeadDays());
        for (ZoneRule rule : ZoneRule.vaultsFirst()) {
            permits.findPart(rule).ifPresent(part -> page.item(rule.shown().label(), "%s", rule.words(part)));
        }
    }

    private void zone(ZoneTouch touch) {
        String name = touch.zone().name().isEmpty() ? "" : ", " + touch.zone().name();
        String until = touch.zone().until().map(day -> ", until " + day).orElse("");
        String vaults = touch.atVault() ? ", vault " + vaults(touch) : "";
        page.item(
                "zone",
                "%s (%s%s%s): %.2f m%s%s",
                touch.zone().id(),
                touch.zone().kind().replace('_', ' '),
                name,
                until,
                touch.lengthM(),
                stretches(touch),
                vaults);
    }

    private static String vaults(ZoneTouch touch) {
        return PermitRow.vaults(touch).toUpperCase(Locale.ROOT).replace(";", " and ");
    }

    private static String stretches(ZoneTouch touch) {
        return touch.stretches().isEmpty()
                ? ""
                : touch.stretches().stream()
                        .map(part -> String.format(Locale.ROOT, "%.2f to %.2f", part.fromM(), part.toM()))
                        .collect(Collectors.joining(", ", " (", ")"));
    }

    private static String words(List<String> keys) {
        return keys.isEmpty() ? "nothing" : String.join(", ", keys).replace('_', ' ');
    }
}
