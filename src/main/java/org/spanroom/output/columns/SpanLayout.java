package org.spanroom.output.columns;

import java.util.List;
import org.spanroom.model.rank.CriterionInfo;

/**
 * What the tables of a run depend on apart from the program.
 *
 * @param criteria those that the scores are the sums of, in their order
 * @param hasElevations whether any line of a span has them
 * @param kept the owner's own fields of the routes that are written too
 */
public record SpanLayout(List<CriterionInfo> criteria, boolean hasElevations, List<String> kept) {
    /** Lines in the plane, without scores. */
    public static final SpanLayout PLAIN = new SpanLayout(List.of(), false);

    public SpanLayout {
        criteria = List.copyOf(criteria);
        kept = List.copyOf(kept);
    }

    /** What no field of the owner's is kept in. */
    public SpanLayout(List<CriterionInfo> criteria, boolean hasElevations) {
        this(criteria, hasElevations, List.of());
    }
}
