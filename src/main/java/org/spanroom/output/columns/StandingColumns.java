package org.spanroom.output.columns;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.Ranked;
import org.spanroom.output.table.Column;

/**
 * The columns of the spans that a scoring decides, by which spans are found in earlier runs: another scoring gives them other values and
 * leaves all else as it is.
 */
public final class StandingColumns {
    public static final Column<Ranked> SPAN_ID = Column.text(
            "span_id", "span_id", "Name of the span, the same in every run on the same data.", Ranked::spanId);

    public static final Column<Ranked> RANK =
            Column.integer("rank", "rank", "Place in the ranking, 1 for the best; empty if excluded.", Ranked::rank);

    public static final Column<Ranked> SCORE = Column.real(
            "score_points",
            "score_pts",
            2,
            "Score out of 100, the sum of its parts.",
            row -> row.score().totalPoints());

    public static final Column<Ranked> EXCLUSION = Column.text(
            "exclusion",
            "exclusion",
            "Why the span is not ranked, as a key; empty if it is. Of several reasons the most basic one.",
            row -> row.verdict().findFirst().map(Exclusion::key));

    private static final Column<Ranked> EXCLUSION_WHY = Column.text(
            "exclusion_why",
            "excl_why",
            "The same in words.",
            row -> row.verdict().findFirst().map(Exclusion::explanation));

    public static final Column<Ranked> EXCLUSIONS = Column.text(
            "exclusions",
            "excl_all",
            "Every reason why the span is not ranked, joined by ;.",
            row -> row.verdict().exclusions().stream().map(Exclusion::key).collect(joining(";")));

    public static final Column<Ranked> CAUTIONS = Column.text(
            "cautions",
            "cautions",
            "What to bear in mind before work, as keys joined by ;, the reasons whose gate is open first.",
            row -> String.join(";", row.verdict().cautionKeys()));

    /** The standing itself, in the order of the table. */
    static final List<Column<Ranked>> VERDICT =
            List.of(SPAN_ID, RANK, SCORE, EXCLUSION, EXCLUSION_WHY, EXCLUSIONS, CAUTIONS);

    private StandingColumns() {}

    /** Returns all of them where scores have the given criteria. */
    public static List<Column<Ranked>> all(List<CriterionInfo> criteria) {
        var columns = new ArrayList<>(VERDICT);
        columns.addAll(ScoreColumns.all(criteria));
        return columns;
    }

    /** Finds the criteria that have points in a table with such columns, in their order. */
    public static List<String> criteria(List<String> columns) {
        return columns.stream()
                .filter(StandingColumns::isPoints)
                .map(column -> column.substring(0, column.length() - ScoreColumns.POINTS.length()))
                .filter(key -> columns.contains(key + ScoreColumns.VALUE))
                .toList();
    }

    /** Returns the column that holds the points of a criterion. */
    public static String pointsOf(String criterion) {
        return criterion + ScoreColumns.POINTS;
    }

    /** Returns whether a column holds points: of a score, or of a part of it. */
    public static boolean isPoints(String column) {
        return column.endsWith(ScoreColumns.POINTS);
    }
}
