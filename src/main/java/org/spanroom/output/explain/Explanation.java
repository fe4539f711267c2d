package org.spanroom.output.explain;

import static org.spanroom.output.explain.ExplanationItem.number;
import static org.spanroom.output.explain.ExplanationItem.text;
import static org.spanroom.output.explain.ExplanationItem.texts;
import static org.spanroom.output.explain.ExplanationItem.whole;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.SpanExplanation;

/**
 * Everything that is shown of one span, built once as a tree: from the place of the span to the parts of its score. Text, JSON and the
 * words of drawings are renderings of this tree, so that all of them say the same.
 */
public final class Explanation {
    static final String CAUTION =
            "Planning figures, uncertain by a factor of two: they rank and warn, they authorize no pull. "
                    + "Local codes, the owner's rules and licensed practice decide.";

    private Explanation() {}

    /** Returns the tree of a span; its title is the name of the span. */
    public static ExplanationSection of(SpanExplanation explained) {
        var parts = new ArrayList<ExplanationPart>(standing(explained));
        parts.addAll(place(explained.span()));
        parts.add(ExplanationDuct.of(explained.span().duct()));
        parts.add(ExplanationRoom.bends(explained.assessment().bends()));
        parts.add(ExplanationRoom.of(explained.assessment().room()));
        parts.add(ExplanationPulls.of(explained));
        parts.add(ExplanationPermits.of(explained.assessment().permits()));
        parts.addAll(ExplanationEffort.of(explained));
        parts.addAll(ExplanationVerdict.of(explained));
        parts.add(new ExplanationSection("", "To keep in mind", List.of(text("caution", "caution", CAUTION))));
        return new ExplanationSection("", "Span " + explained.span().id(), parts);
    }

    private static List<ExplanationPart> standing(SpanExplanation explained) {
        RankedSpan ranked = explained.ranked();
        String why = ranked.verdict().findFirst().map(Exclusion::explanation).orElse("");
        return List.of(
                text("span_id", "", ranked.span().id()),
                whole("rank", "", ranked.rank()),
                whole("spans_ranked", "", explained.recorded().spansRanked()),
                text("standing", "standing", rank(explained)),
                text("exclusion_why", "because", why));
    }

    private static String rank(SpanExplanation explained) {
        RankedSpan ranked = explained.ranked();
        if (ranked.verdict().isExcluded()) {
            return "not ranked";
        } else if (ranked.rank().isEmpty()) {
            return "ranked; the run wrote neither GeoPackage nor CSV to read its rank from";
        }
        return "rank " + ranked.rank().getAsInt() + " of "
                + explained.recorded().spansRanked().orElseThrow();
    }

    private static List<ExplanationPart> place(Span span) {
        return List.of(
                vault("from", "from A", span.from(), span.fromOffsetM()),
                vault("to", "to B", span.to(), span.toOffsetM()),
                number("length_m", "length", span.lengthM(), 3, "m"),
                number("drawn_length_m", "drawn length", span.drawnLengthM(), 3, "m"),
                whole("vertices", "vertices", span.ground().size()),
                texts("routes", "pieces", span.routeIds()),
                text("position_quality", "position quality", span.positionQuality()));
    }

    private static ExplanationPart vault(String key, String label, Vault vault, double offsetM) {
        return new ExplanationLine(
                key,
                label,
                List.of(
                        text("vault_id", "vault", vault.id()),
                        number("offset_m", "beside the line by", offsetM, 3, "m")));
    }
}
