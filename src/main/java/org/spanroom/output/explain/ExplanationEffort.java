package org.spanroom.output.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.EffortLine;
import org.spanroom.model.effort.EffortPart;
import org.spanroom.model.effort.MaterialFlow;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.NewBuild;
import org.spanroom.model.effort.WorkTime;
import org.spanroom.model.rank.SpanExplanation;

/** Hours, material, money and new build of a span, line by line, and what to mind in the work. */
final class ExplanationEffort {
    private ExplanationEffort() {}

    static void add(ExplanationParts parts, SpanExplanation explained, UnitSystem units) {
        Optional<Effort> effort = explained.assessment().effort();
        boolean night = effort.filter(SafetyCautions::isNight).isPresent();
        var safety = new ExplanationValue.Sentences(SafetyCautions.of(explained.span(), night));
        effort.ifPresentOrElse(
                found -> parts.add(section(found, explained, units)),
                () -> parts.value("effort", "", ExplanationValue.ABSENT));
        parts.add(new ExplanationParts().value("safety", "safety", safety).section("", "Before anyone works here"));
        if (effort.isPresent()) {
            var stops = new ExplanationValue.Sentences(StopRules.of(explained, units));
            parts.add(new ExplanationParts().value("stop_rules", "stop", stops).section("", "When to stop"));
        }
    }

    private static ExplanationSection section(Effort effort, SpanExplanation explained, UnitSystem units) {
        List<EffortLine> lines = explained.effortLines();
        String currency = explained.currency();
        var parts = new ExplanationParts().text("currency", "", currency);
        time(parts, effort.time());
        material(parts, effort.material());
        money(parts, effort, currency, units);
        explained.ranked().money().ifPresent(ranges -> ranges(parts, ranges, currency));
        newBuild(parts, effort);
        if (units.isUs()) {
            parts.text("", "quantities and rates below", "metric, as the names of the rates in the rates file say");
        }
        return parts.groups(
                        "lines",
                        lines,
                        (row, line) ->
                                line(row.text("", "kind", heading(line.part().kind(), currency)), line))
                .table("rates", "Rates", ratesOnce(lines), ExplanationEffort::rate)
                .section("effort", "Effort");
    }

    private static void money(ExplanationParts parts, Effort effort, String currency, UnitSystem units) {
        double perCable = effort.recoveryMoneyPerCable().orElse(Double.NaN);
        double perLength = units.perUnit(effort.recoveryMoneyPerCableM().orElse(Double.NaN), "m");
        String length = units.isUs() ? "foot" : "meter";
        parts.number("recovery_money", "cost of recovery", effort.recoveryMoney(), 2, currency)
                .number("recovery_money_per_cable", "per cable gained", perCable, 2, currency)
                .number("recovery_money_per_cable_m", "per cable-" + length + " gained", perLength, 2, currency)
                .whole(
                        "positions_needed",
                        "positions needed",
                        effort.quantities().positionsNeeded())
                .number("build_money", "cost of a new build for these", effort.newBuildMoney(), 2, currency)
                .number("saving_money", "saving", effort.savingMoney(), 2, currency)
                .number("saving_ratio", "saving-to-cost ratio", effort.savingRatio(), 3, "");
    }

    private static void ranges(ExplanationParts parts, MoneyRanges ranges, String currency) {
        range(parts, "recovery", "cost of recovery", ranges.recovery(), currency);
        range(parts, "build", "cost of new build", ranges.newBuild(), currency);
        range(parts, "saving", "saving", ranges.saving(), currency);
    }

    private static void range(ExplanationParts parts, String key, String label, MoneyRange range, String currency) {
        parts.number(key + "_low_money", label + ", low", range.lowMoney(), 2, currency)
                .number(key + "_likely_money", label + ", likely", range.likelyMoney(), 2, currency)
                .number(key + "_high_money", label + ", high", range.highMoney(), 2, currency);
    }

    private static void time(ExplanationParts parts, WorkTime time) {
        parts.number("site_hours", "on site", time.siteHours(), 2, "h")
                .number("labor_hours", "labor hours", time.laborHours(), 2, "h")
                .whole("shifts", "shifts", time.shifts())
                .whole("nights", "night shifts", time.nights())
                .flag("fits_window", "longest pull fits in a shift", time.fitsWindow())
                .number("shared_a_hours", "saved if combined with the span at A", time.sharedAtAHours(), 2, "h")
                .number("shared_b_hours", "saved if combined with the span at B", time.sharedAtBHours(), 2, "h");
    }

    private static void material(ExplanationParts parts, MaterialFlow material) {
        parts.number("innerduct_out_kg", "innerduct out", material.innerductKg(), 1, "kg")
                .whole("bags", "bags", material.bags())
                .whole("loads", "truckloads", material.loads())
                .number("sleeve_m", "sleeve in", material.sleeveM(), 1, "m")
                .number("lubricant_l", "lubricant", material.lubricantLiters(), 1, "l");
    }

    private static void newBuild(ExplanationParts parts, Effort effort) {
        NewBuild build = effort.newBuild();
        boolean assumed = effort.quantities().surfaceAssumed();
        double warmKg = effort.material().co2eWarmKg();
        parts.word("build_method", "new build by", build.method().key())
                .word(
                        "build_surface",
                        "new build in the",
                        effort.quantities().surface().key())
                .because(assumed ? "assumed" : "recorded")
                .flag("surface_assumed", "", assumed)
                .whole("build_ducts", "new ducts", build.ducts())
                .number("trench_avoided_m", "trench avoided", build.trenchM(), 1, "m")
                .number("bore_avoided_m", "boring avoided", build.boreM(), 1, "m")
                .whole(
                        "lead_avoided_days",
                        "permit lead days avoided",
                        effort.quantities().leadDaysAvoided())
                .number("co2e_ice_kg", "CO2e avoided by materials (ICE v2.0)", build.co2eIceKg(), 1, "kg")
                .number("co2e_warm_kg", "CO2e avoided by recycling (WARM v16)", warmKg, 1, "kg");
    }

    private static void line(ExplanationParts row, EffortLine line) {
        row.word("kind", "", line.part().kind())
                .word("part", "part", line.part().key())
                .text("place", "at", line.place())
                .number("quantity_in_unit", "quantity", line.quantityInUnit(), 4, "")
                .text("", "by", line.rate().divides() ? "/" : "x")
                .text("rate", "rate", line.rate().key())
                .number("rate_in_unit", "value", line.rateInUnit(), 5, "")
                .flag("rate_divides", "", line.rate().divides())
                .number("factor_ratio", "factor", line.factorRatio(), 4, "")
                .number("amount_in_unit", "amount", line.amountInUnit(), 4, "")
                .number("low_in_unit", "", line.range().low(), 5, "")
                .number("high_in_unit", "", line.range().high(), 5, "")
                .text("source", "", line.range().source())
                .text("date", "", line.range().date());
    }

    private static String heading(EffortPart.Kind kind, String currency) {
        return switch (kind) {
            case HOURS -> "Hours on site";
            case COST -> "Cost of recovery, " + currency;
            case NEW_BUILD -> "Cost of new build, " + currency;
            case CARBON -> "Emissions avoided, kg CO2e; do not add the last line to the others";
        };
    }

    /** Returns the first line of each rate. */
    private static List<EffortLine> ratesOnce(List<EffortLine> lines) {
        var once = new ArrayList<EffortLine>();
        for (EffortLine line : lines) {
            if (once.stream()
                    .noneMatch(before ->
                            before.rate() == line.rate() && before.range().equals(line.range()))) {
                once.add(line);
            }
        }
        return once;
    }

    private static void rate(ExplanationParts row, EffortLine line) {
        row.text("rate", "rate", line.rate().key())
                .number("low_in_unit", "low", line.range().low(), 5, "")
                .number("rate_in_unit", "value", line.range().value(), 5, "")
                .number("high_in_unit", "high", line.range().high(), 5, "")
                .text("date", "date", line.range().date())
                .text("source", "source", line.range().source());
    }
}
