package org.spanroom.cli;

import java.util.List;
import java.util.Optional;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.learn.ChanceChange;
import org.spanroom.model.learn.FrictionChange;
import org.spanroom.model.learn.LearnResults;
import org.spanroom.model.learn.RateChange;
import org.spanroom.model.learn.RatioEstimate;
import org.spanroom.model.learn.Reported;
import org.spanroom.model.learn.TotalsRow;
import org.spanroom.output.JsonObject;
import org.spanroom.pipeline.LearnRun.LearnSummary;

/** What {@code learn} found, for programs. */
final class LearnJson {
    private static final int RATIO_DECIMALS = 4;
    private static final int UNIT_DECIMALS = 6;

    private LearnJson() {}

    static String text(LearnSummary summary) {
        LearnResults results = summary.results();
        return SummaryJson.begin("learn")
                .number("entries", results.entries())
                .number("spans", results.spans())
                .number("spans_in_run", results.spansOfRun())
                .number("ducts_opened", results.opened())
                .text("currency", summary.currency())
                .objects(
                        "rates",
                        results.rateChanges().stream()
                                .filter(change -> change.estimate().isPresent())
                                .map(LearnJson::rate)
                                .toList())
                .objects(
                        "friction",
                        results.frictionChanges().stream()
                                .map(LearnJson::friction)
                                .toList())
                .objects(
                        "chances",
                        results.chanceChanges().stream().map(LearnJson::chance).toList())
                .objects(
                        "totals",
                        results.totals().stream().map(LearnJson::totals).toList())
                .number("left_out", results.leftOut().size())
                .texts("files", summary.files().stream().map(String::valueOf).toList())
                .texts("cautions", List.of(SummaryJson.CAUTION))
                .write();
    }

    private static JsonObject rate(RateChange change) {
        JsonObject json = new JsonObject()
                .text("learned", change.learned())
                .text("rate", change.rate().map(RateKey::key).orElse(""))
                .text("kind", change.kind());
        change.estimate().ifPresent(found -> estimate(json, found));
        change.before().ifPresent(rate -> json.number("value_before", rate.value(), UNIT_DECIMALS));
        change.after().ifPresent(rate -> after(json, rate));
        return json.text("why_not", change.why());
    }

    private static void after(JsonObject json, Rate rate) {
        json.number("value_after", rate.value(), UNIT_DECIMALS)
                .number("low_after", rate.low(), UNIT_DECIMALS)
                .number("high_after", rate.high(), UNIT_DECIMALS);
    }

    private static void estimate(JsonObject json, RatioEstimate found) {
        json.number("spans", found.spans())
                .number("median_ratio", found.medianRatio(), RATIO_DECIMALS)
                .number("median_low_ratio", found.lowRatio(), RATIO_DECIMALS)
                .number("median_high_ratio", found.highRatio(), RATIO_DECIMALS)
                .number("weight_ratio", found.weightRatio(), RATIO_DECIMALS);
    }

    private static JsonObject friction(FrictionChange change) {
        JsonObject json = new JsonObject().text("stratum", change.stratum()).number("pulls", change.pulls());
        Optional<RatioEstimate> found = change.estimate();
        found.ifPresent(estimate -> estimate(json, estimate));
        change.after()
                .ifPresent(sets -> json.number("duct_dry_ratio", sets.dry().ductRatio(), UNIT_DECIMALS));
        return json;
    }

    private static JsonObject chance(ChanceChange change) {
        return new JsonObject()
                .text("chance", change.chance())
                .text("stratum", change.stratum())
                .number("looked", change.looked())
                .number("events", change.events())
                .number("before_ratio", change.beforeRatio(), RATIO_DECIMALS)
                .number("after_ratio", change.afterRatio(), RATIO_DECIMALS);
    }

    private static JsonObject totals(TotalsRow row) {
        JsonObject json = new JsonObject().text("year", row.year()).number("spans", row.spans());
        sum(json, "length_m", row.lengthM());
        sum(json, "positions_planned", row.positionsPlanned());
        sum(json, "cells_placed", row.cellsPlaced());
        sum(json, "innerduct_out_kg", row.innerductKg());
        sum(json, "recycled_kg", row.recycledKg());
        sum(json, "cost_money", row.costMoney());
        sum(json, "cost_planned_money", row.costPlannedMoney());
        sum(json, "site_hours", row.hours());
        sum(json, "site_planned_hours", row.hoursPlanned());
        return json;
    }

    private static void sum(JsonObject json, String name, Reported sum) {
        sum.sumInUnit().ifPresent(value -> json.number(name, value, 2));
    }
}
