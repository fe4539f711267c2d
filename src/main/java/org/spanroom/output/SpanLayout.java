package org.spanroom.output;

import java.util.List;
import org.spanroom.model.Score;

/**
 * What the tables of a run depend on besides the program.
 *
 * @param criteria those that the scores are the sums of, in their order
 * @param hasElevations whether any line of a span has them
 */
public record SpanLayout(List<String> criteria, boolean hasElevations) {
    /** Every criterion that is known, and lines in the plane. */
    static final SpanLayout KNOWN = new SpanLayout(ScoreColumns.knownCriteria(), false);

    public SpanLayout {
        criteria = List.copyOf(criteria);
    }

    static SpanLayout of(Results results) {
        List<String> criteria = results.spans().first(1).stream()
                .flatMap(row -> row.score().parts().stream())
                .map(Score.Part::criterion)
                .toList();
        return new SpanLayout(criteria, results.network().spans().hasElevations());
    }
}
