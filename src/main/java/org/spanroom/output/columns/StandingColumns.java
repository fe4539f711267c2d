package org.spanroom.output.columns;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.Ranked;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/**
 * The columns of the spans that a scoring decides, by which spans are found in earlier runs: another scoring gives them other values and
 * leaves all else as it is.
 */
public final class StandingColumns {
    public static final Column<Ranked> SPAN_ID = Column.text(
            "span_id", "span_id", "Name of the span, the same in every run on the same data.", Ranked::spanId);

    public static final Column<Ranked> RANK = Column.integer(
            "rank", "rank", CellRange.PLACE, "Place in the ranking, 1 for the best; empty if excluded.", Ranked::rank);

    public static final Column<Ranked> SCORE = Column.real(
            "score_points",
            "score_pts",
            2,
            CellRange.PERCENT,
            "Score out of 100, the sum of its parts.",
            row -> row.score().totalPoints());

    public static final Column<Ranked> EXCLUSION = Column.text(
            "exclusion",
            "exclusion",
            CellRange.KEYS,
            "Why the span is not ranked, as a key; empty if it is ranked. If several reasons apply, the most "
                    + "basic one.",
            row -> row.verdict().findFirst().map(Exclusion::key));

    private static final Column<Ranked> EXCLUSION_TEXT = Column.text(
            "exclusion_text",
            "excl_text",
            "Every reason why the span is not ranked, in words, joined by ;.",
            row -> row.verdict().exclusions().stream()
                    .map(Exclusion::explanation)
                    .collect(joining("; ")));

    /** Only in the table for later commands: another scoring may open the gate of one reason and not of another. */
    public static final Column<Ranked> REASONS = Column.text(
            "reasons",
            "reasons",
            CellRange.KEYS,
            "Every reason why the span is not ranked, as keys joined by ;.",
            row -> row.verdict().exclusions().stream().map(Exclusion::key).collect(joining(";")));

    public static final Column<Ranked> CAUTIONS = Column.text(
            "cautions",
            "cautions",
            CellRange.KEYS,
            "Cautions before work, as keys joined by ;. Reasons whose gate is switched off come first.",
            row -> String.join(";", row.verdict().cautionKeys()));

    /** The standing itself, in the order of the table. */
    static final List<Column<Ranked>> VERDICT = List.of(RANK, SCORE, EXCLUSION, EXCLUSION_TEXT, CAUTIONS);

    private StandingColumns() {}

    /** Returns all of them where scores have the given criteria. */
    public static List<Column<Ranked>> all(List<CriterionInfo> criteria) {
        var columns = new ArrayList<>(List.of(SPAN_ID, REASONS));
        columns.addAll(VERDICT);
        columns.addAll(ScoreColumns.quantities(criteria));
        return columns;
    }
}
