package org.spanroom.output.explain;

import java.util.List;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.FrictionSet;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.pull.PullAssumption;
import org.spanroom.model.pull.PullLimits;
import org.spanroom.model.pull.PullSettings;

/** What the forces of a span's pulls rest on: values not measured there, coefficients, limits. */
final class ExplanationPullSettings {
    private ExplanationPullSettings() {}

    /** Adds what the pulls rest on; if there is no innerduct to pull, the text omits the settings. */
    static void add(ExplanationParts parts, PullAssessment pull, PullSettings settings) {
        parts.table(
                "assumptions",
                "Assumptions that were not measured here",
                pull.assumptions(),
                (row, assumption) -> row.word("assumption", "assumption", assumption.key())
                        .value("", "value", value(assumption, settings))
                        .text("explanation", "meaning", assumption.explanation()));
        parts.add(settings(settings, pull.pulls().isEmpty() ? "" : "Settings"));
    }

    /** Returns the value of an assumption; absent where another part gives it, or there is none. */
    private static ExplanationValue value(PullAssumption assumption, PullSettings settings) {
        PullLimits limits = settings.limits();
        return switch (assumption) {
            case FRICTION -> ExplanationValue.word(settings.judgedBy().key());
            case BREAKAWAY -> ExplanationValue.number(settings.breakawayRatio(), 2, "times");
            case INNERDUCT_STRESS -> ExplanationValue.number(limits.innerductStressMpa(), 3, "MPa");
            case MACHINE_AND_VAULT ->
                new ExplanationValue.Several(List.of(
                        ExplanationValue.number(limits.machinePullN(), 0, "N"),
                        ExplanationValue.number(limits.vaultExitRadiusM(), 2, "m")));
            case WANDER -> ExplanationValue.number(settings.wanderRadPerM(), 5, "rad/m");
            case NEIGHBOR_SHARE ->
                ExplanationValue.number(100 * settings.neighbors().restingShareRatio(), 0, "%");
            case VERTICAL_RADIUS -> ExplanationValue.number(settings.gradeRadiusM(), 2, "m");
            default -> ExplanationValue.ABSENT;
        };
    }

    private static ExplanationSection settings(PullSettings settings, String title) {
        double densityKgPerM3 = settings.innerductDensityKgPerM3();
        double restingShareRatio = settings.neighbors().restingShareRatio();
        int wedgedFrom = settings.neighbors().wedgedFromInnerducts();
        return new ExplanationParts()
                .word(
                        "judged_by",
                        "friction state that decides",
                        settings.judgedBy().key())
                .table(
                        "friction",
                        "Coefficients of friction",
                        List.of(Friction.values()),
                        (row, friction) -> friction(
                                row.word("friction", "friction", friction.key()),
                                settings.friction().of(friction)))
                .number("breakaway_ratio", "breakaway factor", settings.breakawayRatio(), 3, "")
                .number("wander_rad_per_m", "wander", settings.wanderRadPerM(), 6, "rad/m")
                .number("slitter_drag_n", "drag of the slitter", settings.slitterDragN(), 1, "N")
                .flag("simple_capstan", "simple capstan form", settings.simpleCapstan())
                .flag("sealed_when_flooded", "sealed when flooded", settings.sealedWhenFlooded())
                .number("innerduct_density_kg_per_m3", "innerduct density", densityKgPerM3, 1, "kg/m3")
                .number("grade_tolerance_m", "grade tolerance", settings.gradeToleranceM(), 3, "m")
                .number("grade_radius_m", "vertical radius", settings.gradeRadiusM(), 2, "m")
                .number(
                        "end_preference_points",
                        "preference for a better site",
                        settings.endPreferencePoints(),
                        1,
                        "points")
                .number("resting_share_ratio", "resting share", restingShareRatio, 3, "")
                .whole("wedged_from_innerducts", "wedged from innerducts", wedgedFrom)
                .line("limits", "limits", line -> limits(line, settings.limits()))
                .section("settings", title);
    }

    private static void friction(ExplanationParts row, FrictionSet set) {
        row.number("duct_ratio", "innerduct on duct", set.ductRatio(), 3, "")
                .number("jacket_ratio", "cable in its innerduct", set.jacketRatio(), 3, "")
                .number("neighbor_ratio", "innerduct on neighbor", set.neighborRatio(), 3, "");
    }

    private static void limits(ExplanationParts line, PullLimits limits) {
        double refuseLengthM = limits.refuseLengthM() > 0 ? limits.refuseLengthM() : Double.NaN;
        line.number("innerduct_stress_mpa", "innerduct stress", limits.innerductStressMpa(), 3, "MPa")
                .number("machine_pull_n", "machine pull", limits.machinePullN(), 1, "N")
                .number("hold_allowed_n", "cable hold", limits.holdAllowedN(), 1, "N")
                .number("innerduct_sidewall_n_per_m", "innerduct sidewall", limits.innerductSidewallNPerM(), 1, "N/m")
                .number("cable_sidewall_n_per_m", "cable sidewall", limits.cableSidewallNPerM(), 1, "N/m")
                .number("cable_radius_ratio", "cable bend radius", limits.cableRadiusRatio(), 2, "diameters")
                .number("vault_exit_radius_m", "exit radius at the vault", limits.vaultExitRadiusM(), 3, "m")
                .number("outside_slack_m", "slack for a machine outside", limits.outsideSlackM(), 2, "m")
                .number("warn_total_deg", "warn above", limits.warnTotalDeg(), 1, "degrees of bends")
                .number("refuse_total_deg", "refuse above", limits.refuseTotalDeg(), 1, "degrees of bends")
                .number("warn_length_m", "warn above", limits.warnLengthM(), 2, "m")
                .number("refuse_length_m", "refuse above", refuseLengthM, 2, "m");
    }
}
