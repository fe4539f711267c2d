package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of a span that come from packing its cross-section. */
final class PackingColumns {
    private PackingColumns() {}

    static List<Column<RankedSpan>> all() {
        var columns = new ArrayList<>(choice());
        columns.addAll(packings());
        columns.addAll(packingsAfter());
        return columns;
    }

    private static List<Column<RankedSpan>> choice() {
        return List.of(
                Column.text(
                        "pull_choice",
                        "choice",
                        "How many innerducts come out (empty ones first, then the widest), and whether dead "
                                + "cables do: the choice that gains the most positions per hour. Room counts "
                                + "and forces are for this choice.",
                        row -> room(row).proposal().map(PullChoice::words)),
                Column.text(
                        "proposal_reason",
                        "why_choice",
                        "Why it is better to leave some innerducts in place; empty where all are pulled.",
                        row -> room(row).proposalReason()));
    }

    private static List<Column<RankedSpan>> packings() {
        return List.of(
                Column.text(
                        "packing_before",
                        "pack_bef",
                        CellRange.oneOf(Stream.of(PackingOutcome.values()).map(PackingOutcome::key)),
                        "Whether the recorded contents go into the bore: fits, does_not_fit (proved) or undecided.",
                        section(s -> s.before().outcome().key())),
                Column.real(
                        "margin_before_mm",
                        "marg_bef",
                        2,
                        CellRange.NUMBER,
                        "Spare inside diameter: how much smaller the bore could be, at least, and still take "
                                + "them; negative: how much too small it is.",
                        section(s -> s.before().marginMm())),
                Column.real(
                        "gap_before_mm",
                        "gap_bef",
                        2,
                        CellRange.NUMBER,
                        "Where packing_before is undecided: the bore that the best known arrangement needs "
                                + "minus the largest proven minimum bore.",
                        PackingColumns::gapMm));
    }

    private static List<Column<RankedSpan>> packingsAfter() {
        return List.of(
                Column.text(
                        "packing_after",
                        "pack_aft",
                        CellRange.oneOf(Stream.of(PackingOutcome.values()).map(PackingOutcome::key)),
                        "The same for the cables that stay and the new ones; empty where nothing is recovered.",
                        recovered(choice -> choice.after().outcome().key())),
                Column.real(
                        "margin_after_mm",
                        "marg_aft",
                        2,
                        CellRange.NUMBER,
                        "The same margin with the new cables in place, in addition to the bore allowance.",
                        recovered(choice -> choice.after().marginMm())),
                Column.text(
                        "next_sleeve",
                        "next_slv",
                        CellRange.oneOf(Stream.of(PackingOutcome.values()).map(PackingOutcome::key)),
                        "Whether one additional sleeve fits, where packing is the binding rule.",
                        recovered(choice -> choice.nextSleeve().map(PackingOutcome::key))),
                Column.real(
                        "jam_ratio",
                        "jam_ratio",
                        2,
                        CellRange.NOT_NEGATIVE,
                        "Jam ratio of three or more equal innerducts: 1.05 times the bore over their outside "
                                + "diameter; from 2.8 to 3.2 they may jam.",
                        PackingColumns::jamRatio),
                Column.text(
                        "contradiction",
                        "contradict",
                        "Why the recorded contents cannot fit the recorded bore; empty where they can.",
                        row -> room(row).findContradiction()));
    }

    private static OptionalDouble gapMm(RankedSpan row) {
        return room(row)
                .crossSection()
                .map(CrossSection::before)
                .filter(before -> before.outcome() == PackingOutcome.UNDECIDED)
                .map(before -> OptionalDouble.of(before.gapMm()))
                .orElse(OptionalDouble.empty());
    }

    private static OptionalDouble jamRatio(RankedSpan row) {
        return room(row).crossSection().map(CrossSection::jamRatio).orElse(OptionalDouble.empty());
    }

    private static Function<RankedSpan, Object> section(Function<CrossSection, Object> cell) {
        return row -> room(row).crossSection().map(cell);
    }

    private static Function<RankedSpan, Object> recovered(Function<PullChoice, Object> cell) {
        return row -> room(row).proposal().<Object>flatMap(choice -> flat(cell.apply(choice)));
    }

    private static Optional<?> flat(Object value) {
        return value instanceof Optional<?> optional ? optional : Optional.of(value);
    }

    private static Room room(RankedSpan row) {
        return row.assessment().room();
    }
}
