package org.spanroom.output;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.spanroom.model.BuildMethod;
import org.spanroom.model.Effort;
import org.spanroom.model.EffortLine;
import org.spanroom.model.EffortPart;
import org.spanroom.model.NewBuild;
import org.spanroom.model.Reckoning;
import org.spanroom.model.WorkTime;

/** The part of a reckoning's text that tells of hours, material, money and new build, and what must be minded in the work. */
final class EffortText {
    private static final MathContext SHOWN_DIGITS = new MathContext(7);

    private final Reckoning reckoning;
    private final TextPage page;

    EffortText(Reckoning reckoning, TextPage page) {
        this.reckoning = reckoning;
        this.page = page;
    }

    void write() {
        reckoning.ranked().assessment().effort().ifPresent(this::effort);
        boolean night = reckoning
                .ranked()
                .assessment()
                .effort()
                .filter(SafetyCautions::isNight)
                .isPresent();
        page.gap();
        page.line("Before anyone works here");
        SafetyCautions.of(reckoning.ranked().span(), night).forEach(caution -> page.hanging(4, "  - %s", caution));
    }

    private void effort(Effort effort) {
        page.gap();
        page.line(
                "Effort: %.1f h on site, %s %s; saves %s over new build",
                effort.time().siteHours(),
                money(effort.recoveryMoney()),
                reckoning.currency(),
                money(effort.savingMoney()));
        time(effort.time());
        page.item(
                "out",
                "%.1f kg of innerduct in %d bag(s), %d load(s)",
                effort.material().innerductKg(),
                effort.material().bags(),
                effort.material().loads());
        page.item(
                "in",
                "%.1f m of sleeve, %.1f l of lubricant",
                effort.material().sleeveM(),
                effort.material().lubricantLitres());
        newBuild(effort);
        for (EffortPart.Kind kind : EffortPart.Kind.values()) {
            lines(kind);
        }
        sources();
    }

    private void time(WorkTime time) {
        page.item(
                "time",
                "%d %s, %.1f crew-hours; %.2f h less at A, %.2f h less at B if the neighbour is done in the same shift",
                time.shifts(),
                time.night() ? "night(s)" : "shift(s)",
                time.crewHours(),
                time.sharedAtFromHours(),
                time.sharedAtToHours());
        if (!time.fitsWindow()) {
            page.item("mind", "a shift has no time for the longest pull beside opening, making safe and closing");
        }
    }

    private void newBuild(Effort effort) {
        NewBuild build = effort.newBuild();
        if (build.method() == BuildMethod.NONE) {
            return;
        }
        page.item(
                "instead",
                "%d new duct(s) in the %s%s: %s %s (%s; %.1f m trench, %.1f m bored), %d days later",
                build.ducts(),
                effort.quantities().surface().key(),
                effort.quantities().surfaceAssumed() ? ", which is assumed" : "",
                money(effort.newBuildMoney()),
                reckoning.currency(),
                build.method().key().replace('_', ' '),
                build.trenchM(),
                build.boreM(),
                effort.quantities().leadDaysAvoided());
        page.item(
                "CO2e",
                "%.0f kg avoided by materials (ICE v2.0); %.0f kg by recycling (EPA WARM v16); not to be added",
                build.co2eIceKg(),
                effort.material().co2eWarmKg());
    }

    private void lines(EffortPart.Kind kind) {
        List<EffortLine> lines = reckoning.effortLines().stream()
                .filter(line -> line.part().kind() == kind)
                .toList();
        if (lines.isEmpty()) {
            return;
        }
        page.line("  %s", heading(kind));
        lines.forEach(line -> page.line(
                "    %-19s %1s %10s %s %-34s%7s %s= %9s",
                line.part().key().replace('_', ' '),
                line.place(),
                number(line.quantityInUnit()),
                line.rate().divides() ? "/" : "x",
                line.rate().key(),
                number(line.rateInUnit()),
                line.factorRatio() == 1 ? "" : "x " + number(line.factorRatio()) + " ",
                String.format(Locale.ROOT, "%.2f", line.amountInUnit())));
    }

    private String heading(EffortPart.Kind kind) {
        return switch (kind) {
            case HOURS -> "Hours on site";
            case COST -> "Cost of recovery, " + reckoning.currency();
            case NEW_BUILD -> "Cost of new build, " + reckoning.currency();
            case CARBON -> "Emissions avoided, kg CO2e; the last line stands by itself";
        };
    }

    /** Rates of one source stand together: most of them are illustrative. */
    private void sources() {
        Map<String, List<String>> bySource = new LinkedHashMap<>();
        for (EffortLine line : reckoning.effortLines()) {
            String source = line.range().source() + " (" + line.range().date() + ")";
            String rate = String.format(
                    Locale.ROOT,
                    "%s %s to %s",
                    line.rate().key(),
                    number(line.range().low()),
                    number(line.range().high()));
            List<String> rates = bySource.computeIfAbsent(source, key -> new ArrayList<>());
            if (!rates.contains(rate)) {
                rates.add(rate);
            }
        }
        if (!bySource.isEmpty()) {
            page.line("  Rates, low to high, by source");
        }
        bySource.forEach((source, rates) -> page.hanging(6, "    %s: %s", source, String.join(", ", rates)));
    }

    private static String money(double money) {
        return String.format(Locale.ROOT, "%,.0f", money);
    }

    private static String number(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).round(SHOWN_DIGITS);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
