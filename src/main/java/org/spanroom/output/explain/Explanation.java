package org.spanroom.output.explain;

import org.spanroom.model.Counted;
import org.spanroom.model.Term;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.ContentsScenario;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.SpanExplanation;

/**
 * Everything that is shown of one span, built once as a tree: from the place of the span to the parts of its score. Text, JSON and the
 * words of drawings are renderings of this tree, so that all of them say the same.
 */
public final class Explanation {
    /** What everything that is shown of a span says of its figures. */
    public static final String CAUTION =
            "Planning figures, uncertain by a factor of two: they rank and warn but do not authorize a pull. "
                    + "Local codes, the owner's rules and licensed practice govern.";

    private Explanation() {}

    /** Returns the tree of a span in metric units, as the keys say; its title is the name of the span. */
    public static ExplanationSection of(SpanExplanation explained) {
        return of(explained, UnitSystem.METRIC);
    }

    /** Returns the tree of a span for people who read such units. */
    public static ExplanationSection of(SpanExplanation explained, UnitSystem units) {
        return ExplanationUnits.convert(tree(explained, units), units);
    }

    /** Returns the tree with sentences and labels in these units; its numbers are metric. */
    private static ExplanationSection tree(SpanExplanation explained, UnitSystem units) {
        var parts = new ExplanationParts();
        standing(parts, explained);
        place(parts, explained.span());
        parts.add(ExplanationDuct.of(explained.span().duct()));
        ExplanationFieldRecord.add(parts, explained.span().duct().fieldRecord());
        parts.add(ExplanationRoom.bends(explained.assessment().bends()))
                .add(ExplanationRoom.of(
                        explained.assessment().room(),
                        explained.assessment().span().duct().contents().known()))
                .add(ExplanationPulls.of(explained, units))
                .add(ExplanationPermits.of(explained.assessment().permits(), units))
                .add(ExplanationVault.of(explained.span(), SpanEnd.A, explained.needsAtA()))
                .add(ExplanationVault.of(explained.span(), SpanEnd.B, explained.needsAtB()));
        ExplanationEffort.add(parts, explained, units);
        ExplanationVerdict.add(parts, explained, units);
        parts.add(new ExplanationParts().text("caution", "caution", CAUTION).section("", "Limits of these figures"));
        return parts.section("", "Span " + explained.span().id());
    }

    private static void standing(ExplanationParts parts, SpanExplanation explained) {
        RankedSpan ranked = explained.ranked();
        String why = ranked.verdict().findFirst().map(Exclusion::explanation).orElse("");
        parts.text("span_id", "", ranked.span().id())
                .whole("rank", "", ranked.rank())
                .whole("spans_ranked", "", explained.recorded().spansRanked())
                .text("standing", "ranking", rank(explained))
                .text("exclusion_why", "because", why)
                .text("contents_assumption", "but", assumption(ranked));
    }

    /** Returns what heads everything that rests on assumed contents; empty where they are recorded or unknown. */
    private static String assumption(RankedSpan ranked) {
        Duct duct = ranked.span().duct();
        if (duct.contentsSource() != ContentsSource.ASSUMED) {
            return "";
        }
        boolean ofInnerducts = duct.assumed().contains(Term.INNERDUCT_COUNT);
        return "an assumption, not a result: no " + (ofInnerducts ? "innerduct" : "cable") + " count is recorded; "
                + new ContentsScenario(
                                duct.contents().innerducts().size(),
                                duct.contents().cables().size(),
                                1)
                        .inWords()
                + " are assumed"
                + ranked.scenarios()
                        .map(gains -> "; recovery adds " + Counted.of(gains.few(), "position") + " if few, "
                                + gains.many() + " if many")
                        .orElse("");
    }

    private static String rank(SpanExplanation explained) {
        RankedSpan ranked = explained.ranked();
        if (ranked.verdict().isExcluded()) {
            return "not ranked";
        }
        return "rank " + ranked.rank().orElseThrow() + " of "
                + explained.recorded().spansRanked();
    }

    private static void place(ExplanationParts parts, Span span) {
        parts.line(
                        "from",
                        "from A",
                        end -> end.text("vault_id", "vault", span.from().id())
                                .number("offset_m", "offset from the line", span.fromOffsetM(), 3, "m"))
                .line(
                        "to",
                        "to B",
                        end -> end.text("vault_id", "vault", span.to().id())
                                .number("offset_m", "offset from the line", span.toOffsetM(), 3, "m"))
                .number("length_m", "length", span.lengthM(), 3, "m")
                .number("drawn_length_m", "drawn length", span.drawnLengthM(), 3, "m")
                .whole("vertices", "vertices", span.ground().size())
                .texts("routes", "pieces", span.routeIds())
                .text("position_quality", "position quality", span.positionQuality());
    }
}
