package org.spanroom.output.columns;

import java.util.List;
import java.util.OptionalInt;
import java.util.function.Function;
import org.spanroom.model.Answer;
import org.spanroom.model.network.EndFacts;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of the spans with what is recorded of the duct at the two vaults. */
final class EndFactColumns {
    private EndFactColumns() {}

    static List<Column<RankedSpan>> all() {
        return List.of(
                Column.text(
                        "hole_a",
                        "hole_a",
                        "Hole of the duct in the face of its bank at vault A: a number, or row/column; as recorded.",
                        facts(SpanEnd.A, EndFacts::hole)),
                Column.text("hole_b", "hole_b", "The same at vault B.", facts(SpanEnd.B, EndFacts::hole)),
                Column.real(
                        "slack_a_m",
                        "slack_a_m",
                        2,
                        CellRange.AMOUNT,
                        "Recorded slack of each live cable of this duct at vault A. It takes precedence over that of "
                                + "the vault.",
                        facts(SpanEnd.A, EndFacts::slackM)),
                Column.real(
                        "slack_b_m",
                        "slack_b_m",
                        2,
                        CellRange.AMOUNT,
                        "The same at vault B.",
                        facts(SpanEnd.B, EndFacts::slackM)),
                Column.integer(
                        "uncut_a",
                        "uncut_a",
                        CellRange.COUNT,
                        "Innerducts recorded as running uncut through vault A; empty where nothing is recorded.",
                        row -> uncut(row, SpanEnd.A)),
                Column.integer(
                        "uncut_b", "uncut_b", CellRange.COUNT, "The same at vault B.", row -> uncut(row, SpanEnd.B)));
    }

    private static Function<RankedSpan, Object> facts(SpanEnd end, Function<EndFacts, Object> cell) {
        return row -> cell.apply(row.span().factsAt(end));
    }

    private static OptionalInt uncut(RankedSpan row, SpanEnd end) {
        int uncut = 0;
        boolean isRecorded = false;
        for (Innerduct innerduct : row.span().duct().contents().innerducts()) {
            Answer answer = innerduct.uncutAt(end);
            isRecorded |= answer != Answer.UNKNOWN;
            uncut += answer == Answer.YES ? 1 : 0;
        }
        return isRecorded ? OptionalInt.of(uncut) : OptionalInt.empty();
    }
}
