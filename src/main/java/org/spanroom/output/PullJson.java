package org.spanroom.output;

import java.io.IOException;
import java.util.List;
import org.spanroom.model.Friction;
import org.spanroom.model.FrictionSet;
import org.spanroom.model.InnerductPull;
import org.spanroom.model.LimitKind;
import org.spanroom.model.LimitUse;
import org.spanroom.model.PullAssessment;
import org.spanroom.model.PullAssumption;
import org.spanroom.model.PullForces;
import org.spanroom.model.PullLimits;
import org.spanroom.model.PullSettings;
import org.spanroom.model.PullTrace;
import org.spanroom.model.Reckoning;
import org.spanroom.model.SpanEnd;

/** The part of a reckoning's JSON that tells of the pulls. */
final class PullJson {
    private final PullAssessment pull;
    private final PullSettings settings;
    private final List<PullTrace> traces;
    private final JsonPen json;

    PullJson(Reckoning reckoning, JsonPen json) {
        this.pull = reckoning.ranked().assessment().pull();
        this.settings = reckoning.pulling();
        this.traces = reckoning.traces();
        this.json = json;
    }

    void write() throws IOException {
        json.object("pull", () -> {
            json.text("outcome", pull.outcome().key());
            json.text("summary", pull.outcome().summary());
            json.text(
                    "better_end",
                    pull.outcome().findBetterEnd().map(SpanEnd::key).orElse(""));
            json.object("tightest", pull.outcome().findTightest(), this::limit);
            json.text(
                    "failing_end",
                    PullColumns.findFailingEnd(pull.outcome()).map(SpanEnd::key).orElse(""));
            json.object("failing", pull.outcome().findFailing(), this::limit);
            json.texts("warnings", List.copyOf(pull.warnings()), LimitKind::key);
            json.objects("assumptions", List.copyOf(pull.assumptions()), this::assumption);
            json.object("settings", this::settings);
            json.objects("innerducts", traces, this::innerduct);
        });
    }

    private void assumption(PullAssumption assumption) throws IOException {
        json.text("assumption", assumption.key());
        json.text("explanation", assumption.explanation());
    }

    private void settings() throws IOException {
        json.text("judged_by", settings.judgedBy().key());
        json.objects("friction", List.of(Friction.values()), this::friction);
        json.real("breakaway_ratio", settings.breakawayRatio(), 3);
        json.real("wander_rad_per_m", settings.wanderRadPerM(), 6);
        json.real("slitter_drag_n", settings.slitterDragN(), 1);
        json.flag("simple_capstan", settings.simpleCapstan());
        json.flag("sealed_when_flooded", settings.sealedWhenFlooded());
        json.real("innerduct_density_kg_per_m3", settings.innerductDensityKgPerM3(), 1);
        json.real("grade_tolerance_m", settings.gradeToleranceM(), 3);
        json.real("grade_radius_m", settings.gradeRadiusM(), 2);
        json.real("resting_share_ratio", settings.neighbours().restingShareRatio(), 3);
        json.whole("wedged_from_innerducts", settings.neighbours().wedgedFromInnerducts());
        json.object("limits", () -> limits(settings.limits()));
    }

    private void friction(Friction friction) throws IOException {
        FrictionSet set = settings.friction().of(friction);
        json.text("friction", friction.key());
        json.real("duct_ratio", set.ductRatio(), 3);
        json.real("jacket_ratio", set.jacketRatio(), 3);
        json.real("neighbour_ratio", set.neighbourRatio(), 3);
    }

    private void limits(PullLimits limits) throws IOException {
        json.real("innerduct_stress_mpa", limits.innerductStressMpa(), 3);
        json.real("machine_pull_n", limits.machinePullN(), 1);
        json.real("hold_allowed_n", limits.holdAllowedN(), 1);
        json.real("innerduct_sidewall_n_per_m", limits.innerductSidewallNPerM(), 1);
        json.real("cable_sidewall_n_per_m", limits.cableSidewallNPerM(), 1);
        json.real("cable_radius_ratio", limits.cableRadiusRatio(), 2);
        json.real("vault_exit_radius_m", limits.vaultExitRadiusM(), 3);
        json.real("warn_total_deg", limits.warnTotalDeg(), 1);
        json.real("refuse_total_deg", limits.refuseTotalDeg(), 1);
        json.real("warn_length_m", limits.warnLengthM(), 2);
        json.real("refuse_length_m", limits.refuseLengthM(), 2);
    }

    private void innerduct(PullTrace trace) throws IOException {
        InnerductPull turn = trace.pull();
        json.whole("turn", turn.turn());
        json.text("innerduct", turn.innerduct().id());
        json.text("reason", turn.reason().key());
        json.text("explanation", turn.reason().explanation());
        json.real("neighbour_n_per_m", turn.neighbourNPerM(), 3);
        json.real("wedge_ratio", turn.wedgeRatio(), 3);
        json.objects("ways", List.of(trace.fromA(), trace.fromB()), way -> way(trace, way));
    }

    private void way(PullTrace trace, PullTrace.Way way) throws IOException {
        json.text("out_at", way.pullingEnd().key());
        json.text("held_at", way.pullingEnd().opposite().key());
        json.objects("forces", List.of(Friction.values()), friction -> {
            json.text("friction", friction.key());
            forces(trace.pull().from(way.pullingEnd()).forces(friction));
        });
        json.text("traced_friction", trace.friction().key());
        json.objects("sections", way.sections(), this::section);
        json.objects("fall_off", way.fallOff(), step -> {
            json.real("out_m", step.outM(), 2);
            forces(step.forces());
        });
        json.objects("limits", way.limits(), this::limit);
    }

    private void forces(PullForces forces) throws IOException {
        json.real("pull_n", forces.pullN(), 2);
        json.real("hold_n", forces.holdN(), 2);
    }

    private void section(PullTrace.Section section) throws IOException {
        json.text("section", JsonPen.key(section.kind()));
        json.object("near", () -> point(section.near()));
        json.object("far", () -> point(section.far()));
        json.real("turn_deg", Math.toDegrees(section.turnRad()), 2);
        // A straight has no radius; it is null, not 0.
        json.real("radius_m", section.turnRad() == 0 ? Double.NaN : section.radiusM(), 2);
        json.real("rise_m", section.riseM(), 3);
    }

    private void point(PullTrace.Point point) throws IOException {
        json.real("at_m", point.atM(), 2);
        json.real("innerduct_n", point.innerductN(), 2);
        json.real("cable_n", point.cableN(), 2);
    }

    private void limit(LimitUse use) throws IOException {
        json.text("limit", use.kind().key());
        json.real("found_in_unit", PullColumns.inUnit(use, use.foundSi()), 3);
        json.real("allowed_in_unit", PullColumns.inUnit(use, use.allowedSi()), 3);
        json.text("unit", PullColumns.unit(use.kind()));
        json.flag("allowed_is_least", use.kind().isMinimum());
        json.real("utilisation_pct", use.utilisationPercent(), 1);
        json.flag("fails", use.fails());
        json.real("at_m", use.atM(), 2);
    }
}
