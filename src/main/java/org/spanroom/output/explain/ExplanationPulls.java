package org.spanroom.output.explain;

import static org.spanroom.output.explain.ExplanationItem.flag;
import static org.spanroom.output.explain.ExplanationItem.number;
import static org.spanroom.output.explain.ExplanationItem.text;
import static org.spanroom.output.explain.ExplanationItem.whole;
import static org.spanroom.output.explain.ExplanationItem.word;
import static org.spanroom.output.explain.ExplanationItem.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.LimitUse;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.pull.PullForces;
import org.spanroom.model.pull.PullSettings;
import org.spanroom.model.pull.PullTrace;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.columns.PullColumns;

/** The pulls of a span: the answer, what it rests on, each innerduct from either end, each limit. */
final class ExplanationPulls {
    private final PullSettings settings;

    private ExplanationPulls(PullSettings settings) {
        this.settings = settings;
    }

    static ExplanationSection of(SpanExplanation explained) {
        PullAssessment pull = explained.assessment().pull();
        var parts = new ArrayList<>(answer(pull));
        parts.add(ExplanationPullSettings.assumptions(pull, explained.pulling()));
        parts.add(ExplanationPullSettings.of(explained.pulling(), !pull.pulls().isEmpty()));
        var pulls = new ExplanationPulls(explained.pulling());
        parts.add(ExplanationSections.of("innerducts", explained.traces(), pulls::innerduct));
        return new ExplanationSection("pull", "Pulling: " + pull.outcome().summary(), parts);
    }

    private static List<ExplanationPart> answer(PullAssessment pull) {
        boolean hasPulls = !pull.pulls().isEmpty();
        return List.of(
                text("outcome", "", pull.outcome().key()),
                text("summary", "", pull.outcome().summary()),
                end("better_end", "better end", pull.outcome().findBetterEnd()),
                limit("tightest", "tightest limit there", pull.outcome().findTightest()),
                end("failing_end", "failing end", PullColumns.findFailingEnd(pull.outcome())),
                limit("failing", "failing limit there", pull.outcome().findFailing()),
                words(
                        "warnings",
                        hasPulls ? "above the value to warn at" : "",
                        pull.warnings().stream().map(LimitKind::key).toList()));
    }

    private static ExplanationItem end(String key, String label, Optional<SpanEnd> end) {
        return new ExplanationItem(
                key,
                label,
                end.<ExplanationValue>map(any -> new ExplanationValue.Word(any.key(), any.name()))
                        .orElse(ExplanationValue.ABSENT));
    }

    private static ExplanationPart limit(String key, String label, Optional<LimitUse> limit) {
        return limit.<ExplanationPart>map(use -> new ExplanationLine(key, label, limit(use)))
                .orElseGet(() -> new ExplanationItem(key, label, ExplanationValue.ABSENT));
    }

    private static List<ExplanationPart> limit(LimitUse use) {
        String unit = PullColumns.unit(use.kind());
        return List.of(
                word("limit", "limit", use.kind().key()),
                number("found_in_unit", "found", PullColumns.inUnit(use, use.foundSi()), 3, unit),
                number("allowed_in_unit", "allowed", PullColumns.inUnit(use, use.allowedSi()), 3, unit),
                text("", "allowed as", use.kind().isMinimum() ? "minimum" : "maximum"),
                text("unit", "", unit),
                flag("allowed_is_least", "", use.kind().isMinimum()),
                number("utilisation_pct", "used", use.utilisationPercent(), 1, "%"),
                flag("fails", "fails", use.fails()),
                number("at_m", "at", use.atM(), 2, "m from A"));
    }

    private ExplanationSection innerduct(PullTrace trace) {
        InnerductPull pull = trace.pull();
        return new ExplanationSection(
                "",
                "Pull " + pull.turn() + ": innerduct " + pull.innerduct().id(),
                List.of(
                        whole("turn", "", pull.turn()),
                        text("innerduct", "", pull.innerduct().id()),
                        word("reason", "", pull.reason().key()),
                        text("explanation", "why now", pull.reason().explanation()),
                        number("neighbour_n_per_m", "neighbors lying on it", pull.neighbourNPerM(), 3, "N/m"),
                        number("wedge_ratio", "wedge factor", pull.wedgeRatio(), 3, ""),
                        bothEnds(pull),
                        ExplanationSections.of("ways", List.of(trace.fromA(), trace.fromB()), way -> way(trace, way))));
    }

    private static ExplanationTable bothEnds(InnerductPull pull) {
        return ExplanationTable.of(
                "",
                "Steady forces by the state of friction",
                List.of(Friction.values()),
                friction -> List.of(
                        word("", "friction", friction.key()),
                        number(
                                "",
                                "pull out at A",
                                pull.fromA().forces(friction).pullN(),
                                1,
                                "N"),
                        number("", "hold at B", pull.fromA().forces(friction).holdN(), 1, "N"),
                        number(
                                "",
                                "pull out at B",
                                pull.fromB().forces(friction).pullN(),
                                1,
                                "N"),
                        number("", "hold at A", pull.fromB().forces(friction).holdN(), 1, "N")));
    }

    private ExplanationSection way(PullTrace trace, PullTrace.Way way) {
        SpanEnd out = way.pullingEnd();
        String friction = trace.friction().key();
        return new ExplanationSection(
                "",
                "Out at " + out + ", cable held at " + out.opposite() + ", friction " + friction,
                List.of(
                        text("out_at", "", out.key()),
                        text("held_at", "", out.opposite().key()),
                        ExplanationTable.of(
                                "forces",
                                "",
                                List.of(Friction.values()),
                                state -> List.of(
                                        text("friction", "", state.key()),
                                        pullN("", trace.pull().from(out).forces(state)),
                                        holdN("", trace.pull().from(out).forces(state)))),
                        text("traced_friction", "", friction),
                        ExplanationTable.of("sections", "Section by section, steady", way.sections(), this::section),
                        ExplanationTable.of(
                                "fall_off",
                                "As it comes out, steady",
                                way.fallOff(),
                                step -> List.of(
                                        number("out_m", "out", step.outM(), 2, "m"),
                                        pullN("pull", step.forces()),
                                        holdN("hold", step.forces()))),
                        ExplanationTable.of("limits", limits(), way.limits(), ExplanationPulls::limit)));
    }

    private String limits() {
        return settings.breakawayRatio() == 1
                ? "Limits, without breakaway"
                : String.format(
                        Locale.ROOT,
                        "Limits, forces at breakaway: %.2f times the steady ones",
                        settings.breakawayRatio());
    }

    private static ExplanationPart pullN(String label, PullForces forces) {
        return number("pull_n", label, forces.pullN(), 2, "N");
    }

    private static ExplanationPart holdN(String label, PullForces forces) {
        return number("hold_n", label, forces.holdN(), 2, "N");
    }

    private List<ExplanationPart> section(PullTrace.Section section) {
        boolean turns = section.turnRad() != 0;
        return List.of(
                word("section", "section", section.kind()),
                new ExplanationLine("near", "start", point(section.near())),
                new ExplanationLine("far", "end", point(section.far())),
                number("turn_deg", "turn", Math.toDegrees(section.turnRad()), 2, "degrees"),
                // A straight has no radius: it is absent, not 0.
                number("radius_m", "radius", turns ? section.radiusM() : Double.NaN, 2, "m"),
                number("rise_m", "rise", section.riseM(), 3, "m"));
    }

    private static List<ExplanationPart> point(PullTrace.Point point) {
        return List.of(
                number("at_m", "at", point.atM(), 2, "m from A"),
                number("innerduct_n", "innerduct", point.innerductN(), 2, "N"),
                number("cable_n", "cable", point.cableN(), 2, "N"));
    }
}
