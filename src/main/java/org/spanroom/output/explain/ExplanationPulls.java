package org.spanroom.output.explain;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.pull.EndReason;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.LimitUse;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.pull.PullForces;
import org.spanroom.model.pull.PullOutcome;
import org.spanroom.model.pull.PullTrace;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.columns.PullColumns;

/** The pulls of a span: the answer, what it rests on, each innerduct from either end, each limit. */
final class ExplanationPulls {
    private static final List<Friction> STATES = List.of(Friction.values());

    private ExplanationPulls() {}

    static ExplanationSection of(SpanExplanation explained, UnitSystem units) {
        PullAssessment pull = explained.assessment().pull();
        var parts = new ExplanationParts();
        answer(parts, pull, explained, units);
        ExplanationPullSettings.add(parts, pull, explained.pulling());
        double breakawayRatio = explained.pulling().breakawayRatio();
        return parts.sections("innerducts", explained.traces(), trace -> innerduct(trace, breakawayRatio))
                .section("pull", "Pulling: " + pull.outcome().summary(units));
    }

    private static void answer(
            ExplanationParts parts, PullAssessment pull, SpanExplanation explained, UnitSystem units) {
        PullOutcome outcome = pull.outcome();
        parts.text("outcome", "", outcome.key())
                .text("summary", "", outcome.summary(units))
                .value("better_end", "better end", end(outcome.findBetterEnd()))
                .value("better_end_reason", "", reason(outcome, EndReason::key))
                .value("", "because", reason(outcome, EndReason::explanation));
        limit(parts, "tightest", "tightest limit there", outcome.findTightest());
        explained.assessment().laterPull().ifPresent(later -> later(parts, later, units));
        parts.value("failing_end", "failing end", end(PullColumns.findFailingEnd(outcome)));
        limit(parts, "failing", "failing limit there", outcome.findFailing());
        String warns = pull.pulls().isEmpty() ? "" : "above the warning limit";
        parts.words("warnings", warns, pull.warnings(), LimitKind::key);
    }

    private static ExplanationValue reason(PullOutcome outcome, Function<EndReason, String> words) {
        return outcome.findEndReason()
                .map(words)
                .<ExplanationValue>map(ExplanationValue::word)
                .orElse(ExplanationValue.ABSENT);
    }

    /** Using today's room beside the innerducts first makes each later pull heavier. */
    private static void later(ExplanationParts parts, PullAssessment later, UnitSystem units) {
        parts.number(
                        "pull_later_pct",
                        "if the room beside innerducts is used first",
                        later.utilizationPercent(),
                        1,
                        "%")
                .text("pull_later_summary", "pull in that case", later.outcome().summary(units));
    }

    private static ExplanationValue end(Optional<SpanEnd> end) {
        return end.<ExplanationValue>map(any -> new ExplanationValue.Word(any.key(), any.name()))
                .orElse(ExplanationValue.ABSENT);
    }

    private static void limit(ExplanationParts parts, String key, String label, Optional<LimitUse> limit) {
        limit.ifPresentOrElse(
                use -> parts.line(key, label, line -> limit(line, use)),
                () -> parts.value(key, label, ExplanationValue.ABSENT));
    }

    private static void limit(ExplanationParts row, LimitUse use) {
        String unit = PullColumns.unit(use.kind());
        row.word("limit", "limit", use.kind().key())
                .number("found_in_unit", "found", PullColumns.inUnit(use, use.foundSi()), 3, unit)
                .number("allowed_in_unit", "allowed", PullColumns.inUnit(use, use.allowedSi()), 3, unit)
                .text("", "allowed as", use.kind().isMinimum() ? "minimum" : "maximum")
                .text("unit", "", unit)
                .flag("allowed_is_least", "", use.kind().isMinimum())
                .number("utilization_pct", "used", use.utilizationPercent(), 1, "%")
                .flag("fails", "", use.fails())
                .text("", "result", use.fails() ? "fails" : "ok")
                .number("at_m", "at", use.atM(), 2, "m from A");
    }

    private static ExplanationSection innerduct(PullTrace trace, double breakawayRatio) {
        InnerductPull pull = trace.pull();
        return new ExplanationParts()
                .whole("turn", "", pull.turn())
                .text("innerduct", "", pull.innerduct().id())
                .word("reason", "", pull.reason().key())
                .text("explanation", "why in this order", pull.reason().explanation())
                .number("neighbor_n_per_m", "weight of neighbors resting on it", pull.neighborNPerM(), 3, "N/m")
                .number("wedge_ratio", "wedge factor", pull.wedgeRatio(), 3, "")
                .table("", "Steady forces by friction state", STATES, (row, state) -> bothEnds(row, pull, state))
                .sections("ways", List.of(trace.fromA(), trace.fromB()), way -> way(trace, way, breakawayRatio))
                .section(
                        "",
                        "Pull " + pull.turn() + ": innerduct "
                                + pull.innerduct().id());
    }

    private static void bothEnds(ExplanationParts row, InnerductPull pull, Friction state) {
        PullForces fromA = pull.fromA().forces(state);
        PullForces fromB = pull.fromB().forces(state);
        row.word("", "friction", state.key())
                .number("", "pull out at A", fromA.pullN(), 1, "N")
                .number("", "hold at B", fromA.holdN(), 1, "N")
                .number("", "pull out at B", fromB.pullN(), 1, "N")
                .number("", "hold at A", fromB.holdN(), 1, "N");
    }

    private static ExplanationSection way(PullTrace trace, PullTrace.Way way, double breakawayRatio) {
        SpanEnd out = way.pullingEnd();
        String friction = trace.friction().key();
        return new ExplanationParts()
                .text("out_at", "", out.key())
                .text("held_at", "", out.opposite().key())
                .table(
                        "forces",
                        "",
                        STATES,
                        (row, state) -> forces(
                                row.text("friction", "", state.key()),
                                trace.pull().from(out).forces(state),
                                "",
                                ""))
                .text("traced_friction", "", friction)
                .table("sections", "Section by section, steady", way.sections(), ExplanationPulls::section)
                .table(
                        "fall_off",
                        "As it comes out, steady",
                        way.fallOff(),
                        (row, step) ->
                                forces(row.number("out_m", "out", step.outM(), 2, "m"), step.forces(), "pull", "hold"))
                .table("limits", limits(breakawayRatio), way.limits(), ExplanationPulls::limit)
                .section("", "Out at " + out + ", cable held at " + out.opposite() + ", friction " + friction);
    }

    private static void forces(ExplanationParts row, PullForces forces, String pull, String hold) {
        row.number("pull_n", pull, forces.pullN(), 2, "N").number("hold_n", hold, forces.holdN(), 2, "N");
    }

    private static String limits(double breakawayRatio) {
        return breakawayRatio == 1
                ? "Limits, without breakaway"
                : String.format(Locale.ROOT, "Limits, at breakaway: %.2f times the steady forces", breakawayRatio);
    }

    private static void section(ExplanationParts row, PullTrace.Section section) {
        // A straight has no radius: it is absent, not 0.
        double radiusM = section.turnRad() == 0 ? Double.NaN : section.radiusM();
        row.word("section", "section", section.kind())
                .line("near", "start", end -> point(end, section.near()))
                .line("far", "end", end -> point(end, section.far()))
                .number("turn_deg", "turn", Math.toDegrees(section.turnRad()), 2, "degrees")
                .number("radius_m", "radius", radiusM, 2, "m")
                .number("rise_m", "rise", section.riseM(), 3, "m");
    }

    private static void point(ExplanationParts row, PullTrace.Point point) {
        row.number("at_m", "at", point.atM(), 2, "m from A")
                .number("innerduct_n", "innerduct", point.innerductN(), 2, "N")
                .number("cable_n", "cable", point.cableN(), 2, "N");
    }
}
