package org.spanroom.output.columns;

import java.util.List;
import java.util.Optional;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** One choice of innerducts to pull from one span, as a row. */
public record ChoiceRow(String spanId, PullChoice choice, boolean proposed) {
    public static final Table<ChoiceRow> TABLE = Table.plain(
            "choices",
            "One row for each choice of innerducts to pull, leaving all in place first, span by span in the "
                    + "order of the ranking; only"
                    + " of spans for which one is proposed.",
            List.of(
                    Column.text("span_id", "span_id", "The span.", ChoiceRow::spanId),
                    Column.text(
                            "pull_choice",
                            "choice",
                            "Which innerducts come out, and whether dead cables do.",
                            row -> row.choice().words()),
                    Column.flag("proposed", "proposed", "Whether the run proposes this choice.", ChoiceRow::proposed),
                    Column.flag(
                            "allowed",
                            "allowed",
                            "Whether the rules allow it to be proposed.",
                            row -> row.choice().allowed()),
                    Column.integer(
                            "positions_gained",
                            "pos_gain",
                            "Positions that it adds to those of today; below 0 where it takes some away.",
                            row -> row.choice().positionsGained()),
                    Column.integer(
                            "new_cables",
                            "new_cables",
                            "Design cables in new sleeves.",
                            row -> row.choice().newCables()),
                    Column.integer(
                            "positions_in_innerducts",
                            "in_innerd",
                            "Innerducts left in place that are positions.",
                            row -> row.choice().positions().inInnerducts()),
                    Column.text(
                            "binding_rule",
                            "binding",
                            "The rule that allows no additional sleeve.",
                            row -> row.choice().bindingRule())));

    /** Returns a span's rows; none where nothing is proposed. */
    public static List<ChoiceRow> of(RankedSpan span) {
        Room room = span.assessment().room();
        Optional<PullChoice> proposal = room.proposal();
        return proposal.map(chosen -> room.choices().stream()
                        .map(choice -> new ChoiceRow(
                                span.spanId(), choice, choice.words().equals(chosen.words())))
                        .toList())
                .orElse(List.of());
    }
}
