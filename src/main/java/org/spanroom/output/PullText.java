package org.spanroom.output;

import static org.spanroom.output.ReckoningText.word;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.spanroom.model.Friction;
import org.spanroom.model.FrictionSet;
import org.spanroom.model.InnerductPull;
import org.spanroom.model.LimitUse;
import org.spanroom.model.PullAssessment;
import org.spanroom.model.PullAssumption;
import org.spanroom.model.PullForces;
import org.spanroom.model.PullSettings;
import org.spanroom.model.PullTrace;
import org.spanroom.model.Reckoning;

/** The part of a reckoning's text that tells of the pulls: what they rest on, each innerduct, each way, each limit. */
final class PullText {
    private final Reckoning reckoning;
    private final PullSettings settings;
    private final TextPage page;

    PullText(Reckoning reckoning, TextPage page) {
        this.reckoning = reckoning;
        this.settings = reckoning.pulling();
        this.page = page;
    }

    void write() {
        PullAssessment pull = reckoning.ranked().assessment().pull();
        page.gap();
        page.line("Pulling: %s", pull.outcome().summary());
        if (pull.pulls().isEmpty()) {
            return;
        }
        if (!pull.warnings().isEmpty()) {
            page.item(
                    "warns",
                    "%s above the value to warn at",
                    pull.warnings().stream().map(ReckoningText::word).collect(Collectors.joining(", ")));
        }
        page.line("  It rests on values that nobody measured here:");
        pull.assumptions().forEach(this::assumption);
        coefficients();
        reckoning.traces().forEach(this::innerduct);
    }

    private void assumption(PullAssumption assumption) {
        String value = value(assumption);
        page.hanging(
                23, "    %-18s %s%s", word(assumption), assumption.explanation(), value.isEmpty() ? "" : ": " + value);
    }

    /** Returns the value that stands behind an assumption; empty where it is said elsewhere, or is none. */
    private String value(PullAssumption assumption) {
        return switch (assumption) {
            case FRICTION -> "judged " + word(settings.judgedBy());
            case BREAKAWAY -> number("%.2f", settings.breakawayRatio());
            case INNERDUCT_STRESS -> number("%.3f MPa", settings.limits().innerductStressMpa());
            case MACHINE_AND_VAULT ->
                number(
                        "%.0f N, %.2f m",
                        settings.limits().machinePullN(), settings.limits().vaultExitRadiusM());
            case WANDER -> number("%.5f rad/m", settings.wanderRadPerM());
            case NEIGHBOUR_SHARE ->
                number("%.0f %%", 100 * settings.neighbours().restingShareRatio());
            case VERTICAL_RADIUS -> number("%.2f m", settings.gradeRadiusM());
            default -> "";
        };
    }

    private void coefficients() {
        page.line("  %-22s %12s %12s %12s", "coefficient of", "innerduct", "cable in its", "innerduct on");
        page.line("  %-22s %12s %12s %12s", "friction", "on duct", "innerduct", "neighbour");
        for (Friction friction : Friction.values()) {
            FrictionSet set = settings.friction().of(friction);
            page.line(
                    "    %-20s %12.2f %12.2f %12.2f%s",
                    word(friction),
                    set.ductRatio(),
                    set.jacketRatio(),
                    set.neighbourRatio(),
                    friction == settings.judgedBy() ? "  judged by" : "");
        }
    }

    private void innerduct(PullTrace trace) {
        InnerductPull pull = trace.pull();
        page.gap();
        page.line("  Pull %d: innerduct %s", pull.turn(), pull.innerduct().id());
        page.line("    why now: %s", pull.reason().explanation());
        page.line("    neighbours lying on it %.2f N/m, wedge factor %.2f", pull.neighbourNPerM(), pull.wedgeRatio());
        page.line("    %-21s %18s %18s", "steady pull / hold, N", "out at A", "out at B");
        for (Friction friction : Friction.values()) {
            page.line(
                    "    %-21s %18s %18s",
                    word(friction),
                    pair(pull.fromA().forces(friction)),
                    pair(pull.fromB().forces(friction)));
        }
        way(trace, trace.fromA());
        way(trace, trace.fromB());
    }

    private void way(PullTrace trace, PullTrace.Way way) {
        page.line(
                "    Out at %s, cable held at %s, friction %s, steady",
                way.pullingEnd(), way.pullingEnd().opposite(), word(trace.friction()));
        page.line(
                "      %9s  %-8s %8s %9s %8s %12s %10s",
                "m from A", "section", "degrees", "radius m", "rise m", "innerduct N", "cable N");
        boolean isFirst = true;
        for (PullTrace.Section section : way.sections()) {
            if (isFirst) {
                boundary(section.near(), String.format(Locale.ROOT, "%-8s %8s %9s %8s", "anchor", "", "", ""));
                isFirst = false;
            }
            boundary(section.far(), shape(section));
        }
        fallOff(way.fallOff());
        limits(way.limits());
    }

    private void boundary(PullTrace.Point point, String what) {
        page.line("      %9.2f  %s %12.1f %10.1f", point.atM(), what, point.innerductN(), point.cableN());
    }

    private static String shape(PullTrace.Section section) {
        boolean turns = section.turnRad() != 0;
        return String.format(
                Locale.ROOT,
                "%-8s %8s %9s %8s",
                word(section.kind()),
                turns ? number("%.1f", Math.toDegrees(section.turnRad())) : "",
                turns ? number("%.2f", section.radiusM()) : "",
                section.riseM() == 0 ? "" : number("%.2f", section.riseM()));
    }

    private void fallOff(List<PullTrace.FallOff> steps) {
        page.line("      as it comes out");
        falling("m out", steps, PullTrace.FallOff::outM);
        falling("pull N", steps, step -> step.forces().pullN());
        falling("hold N", steps, step -> step.forces().holdN());
    }

    private void falling(String label, List<PullTrace.FallOff> steps, Function<PullTrace.FallOff, Double> quantity) {
        page.line(
                "        %-8s %s",
                label,
                steps.stream()
                        .map(step -> number("%9.1f", quantity.apply(step)))
                        .collect(Collectors.joining(" ")));
    }

    private void limits(List<LimitUse> uses) {
        page.line(
                "      limits, %s",
                settings.breakawayRatio() == 1
                        ? "without breakaway"
                        : number("forces at breakaway: %.2f times the steady ones", settings.breakawayRatio()));
        page.line("      %7s  %-22s %12s    %12s %-8s %9s", "used", "limit", "found", "allowed", "", "m from A");
        for (LimitUse use : uses) {
            String format = use.kind().unit().equals("m") ? "%12.2f %s %12.2f %-8s" : "%12.1f %s %12.1f %-8s";
            page.line(
                    "      %5.0f %%  %-22s " + format + " %9.2f%s",
                    use.utilisationPercent(),
                    word(use.kind()),
                    PullColumns.inUnit(use, use.foundSi()),
                    use.kind().isMinimum() ? ">=" : "<=",
                    PullColumns.inUnit(use, use.allowedSi()),
                    PullColumns.unit(use.kind()),
                    use.atM(),
                    use.fails() ? "  FAILS" : "");
        }
    }

    private static String pair(PullForces forces) {
        return number("%.1f / %.1f", forces.pullN(), forces.holdN());
    }

    private static String number(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
