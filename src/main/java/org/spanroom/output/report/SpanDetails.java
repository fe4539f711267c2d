package org.spanroom.output.report;

import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.explain.Explanation;

/** Makes the detail of a span from everything that a run found out about it. */
public final class SpanDetails {
    private SpanDetails() {}

    /** Returns the detail of a span, its words in these units. */
    public static SpanDetail of(SpanExplanation explained, UnitSystem units) {
        return new SpanDetail(
                explained.span().id(),
                Explanation.of(explained, units),
                SectionDrawings.of(explained.assessment().room()),
                PullCurves.of(explained),
                MoneyLines.of(explained, units));
    }
}
