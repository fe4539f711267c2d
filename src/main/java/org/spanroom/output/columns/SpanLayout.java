package org.spanroom.output.columns;

import java.util.List;
import java.util.Set;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.rank.CriterionInfo;

/**
 * What the tables of a run depend on apart from the program.
 *
 * @param criteria those that the scores are the sums of, in their order
 * @param hasElevations whether any line of a span has them
 * @param kept the owner's own fields of the routes that are written too
 * @param groups the groups of columns and tables that are written in addition to the core columns
 * @param hasFieldBook whether the run has a field book, of which the spans then have columns
 */
public record SpanLayout(
        List<CriterionInfo> criteria,
        boolean hasElevations,
        List<String> kept,
        Set<ColumnGroup> groups,
        boolean hasFieldBook) {
    /** Lines in the plane, without scores, with every other column. */
    public static final SpanLayout PLAIN = new SpanLayout(List.of(), false);

    public SpanLayout {
        criteria = List.copyOf(criteria);
        kept = List.copyOf(kept);
        groups = Set.copyOf(groups);
    }

    /** With the columns of a field book, for those who read tables that may have them. */
    public SpanLayout(List<CriterionInfo> criteria, boolean hasElevations, List<String> kept, Set<ColumnGroup> groups) {
        this(criteria, hasElevations, kept, groups, true);
    }

    /** All groups, and no field of the owner's. */
    public SpanLayout(List<CriterionInfo> criteria, boolean hasElevations) {
        this(criteria, hasElevations, List.of(), ColumnGroup.all());
    }
}
