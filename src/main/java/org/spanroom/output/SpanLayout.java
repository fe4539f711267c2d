package org.spanroom.output;

import java.util.List;
import org.spanroom.model.CriterionInfo;

/**
 * What the tables of a run depend on apart from the program.
 *
 * @param criteria those that the scores are the sums of, in their order
 * @param hasElevations whether any line of a span has them
 */
public record SpanLayout(List<CriterionInfo> criteria, boolean hasElevations) {
    /** Lines in the plane, without scores. */
    static final SpanLayout PLAIN = new SpanLayout(List.of(), false);

    public SpanLayout {
        criteria = List.copyOf(criteria);
    }
}
