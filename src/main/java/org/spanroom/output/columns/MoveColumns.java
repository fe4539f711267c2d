package org.spanroom.output.columns;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.rank.SpanMove;
import org.spanroom.model.rank.Standing;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of a comparison of two runs. */
public final class MoveColumns {
    public static final Table<SpanMove> TABLE = Table.layer(
            "moves",
            "One row for each span whose rank, score or reason differs in the second of two runs, by cause, the "
                    + "largest move first.",
            GeometryKind.LINE,
            row -> row.lonLat().map(Shape::line).orElse(Shape.EMPTY),
            List.of(
                    Column.text("span_id", "span_id", "Name of the span.", SpanMove::spanId),
                    Column.text(
                            "cause",
                            "cause",
                            "new or gone: only one run has the span; excluded or admitted: it lost or gained a "
                                    + "rank; score: its own score changed, ranked or not; others: only scores of other spans "
                                    + "changed; reason: neither run ranks it, for different reasons.",
                            row -> row.cause().key()),
                    Column.integer("rank_before", "rank_bef", "Rank in the first run.", row -> rank(row.before())),
                    Column.integer("rank_after", "rank_aft", "Rank in the second run.", row -> rank(row.after())),
                    Column.integer(
                            "rank_gain",
                            "rank_gain",
                            "How many places it went up; less than 0: down.",
                            SpanMove::rankGain),
                    Column.real(
                            "score_before_points",
                            "score_bef",
                            2,
                            "Score in the first run.",
                            row -> row.before().map(Standing::scorePoints)),
                    Column.real(
                            "score_after_points",
                            "score_aft",
                            2,
                            "Score in the second run.",
                            row -> row.after().map(Standing::scorePoints)),
                    Column.text(
                            "part_changes",
                            "parts",
                            "What each criterion adds to the change of the score in points, the largest first.",
                            row -> String.join("; ", row.partChanges())),
                    Column.text(
                            "exclusion_before",
                            "excl_bef",
                            "Why the first run does not rank it.",
                            row -> row.before().map(Standing::exclusion)),
                    Column.text(
                            "exclusion_after",
                            "excl_aft",
                            "Why the second run does not rank it.",
                            row -> row.after().map(Standing::exclusion)),
                    Column.text(
                            "value_changes",
                            "values",
                            "Other columns whose values differ, with both values.",
                            row -> String.join("; ", row.valueChanges())),
                    Column.text(
                            "field_changes",
                            "field_chg",
                            "Entries of the field book about the span or a vault at its end that only the second run has; after "
                                    + "`without`, those that only the first has.",
                            row -> String.join("; ", row.fieldChanges()))));

    private MoveColumns() {}

    private static OptionalInt rank(Optional<Standing> standing) {
        return standing.map(Standing::rank).orElse(OptionalInt.empty());
    }
}
