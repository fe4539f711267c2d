package org.spanroom.output;

import java.io.IOException;
import java.util.function.Function;
import org.spanroom.model.Effort;
import org.spanroom.model.EffortLine;
import org.spanroom.model.Reckoning;

/** The part of a reckoning's JSON that tells of hours, material, money and new build, and what must be minded in the work. */
final class EffortJson {
    private final Reckoning reckoning;
    private final JsonPen json;

    EffortJson(Reckoning reckoning, JsonPen json) {
        this.reckoning = reckoning;
        this.json = json;
    }

    void write() throws IOException {
        var effort = reckoning.ranked().assessment().effort();
        json.object("effort", effort, this::effort);
        boolean night = effort.filter(SafetyCautions::isNight).isPresent();
        json.texts("safety", SafetyCautions.of(reckoning.ranked().span(), night), Function.identity());
    }

    private void effort(Effort effort) throws IOException {
        json.text("currency", reckoning.currency());
        json.real("site_hours", effort.time().siteHours(), 2);
        json.real("crew_hours", effort.time().crewHours(), 2);
        json.whole("shifts", effort.time().shifts());
        json.whole("nights", effort.time().nights());
        json.flag("fits_window", effort.time().fitsWindow());
        json.real("shared_from_hours", effort.time().sharedAtFromHours(), 2);
        json.real("shared_to_hours", effort.time().sharedAtToHours(), 2);
        json.real("recovery_money", effort.recoveryMoney(), 2);
        json.text("build_method", effort.newBuild().method().key());
        json.text("build_surface", effort.quantities().surface().key());
        json.flag("surface_assumed", effort.quantities().surfaceAssumed());
        json.whole("build_ducts", effort.newBuild().ducts());
        json.real("build_money", effort.newBuildMoney(), 2);
        json.real("trench_avoided_m", effort.newBuild().trenchM(), 1);
        json.real("bore_avoided_m", effort.newBuild().boreM(), 1);
        json.real("saving_money", effort.savingMoney(), 2);
        json.real("saving_ratio", effort.savingRatio(), 3);
        json.whole("lead_avoided_days", effort.quantities().leadDaysAvoided());
        json.real("co2e_ice_kg", effort.newBuild().co2eIceKg(), 1);
        json.real("co2e_warm_kg", effort.material().co2eWarmKg(), 1);
        json.objects("lines", reckoning.effortLines(), this::line);
    }

    private void line(EffortLine line) throws IOException {
        json.text("kind", JsonPen.key(line.part().kind()));
        json.text("part", line.part().key());
        json.text("place", line.place());
        json.real("quantity_in_unit", line.quantityInUnit(), 4);
        json.text("rate", line.rate().key());
        json.real("rate_in_unit", line.rateInUnit(), 5);
        json.flag("rate_divides", line.rate().divides());
        json.real("factor_ratio", line.factorRatio(), 4);
        json.real("amount_in_unit", line.amountInUnit(), 4);
        json.real("low_in_unit", line.range().low(), 5);
        json.real("high_in_unit", line.range().high(), 5);
        json.text("source", line.range().source());
        json.text("date", line.range().date());
    }
}
