package org.spanroom.output.columns;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.Column;

/** The columns of a span that come from packing its cross-section. */
final class PackingColumns {
    private PackingColumns() {}

    static List<Column<RankedSpan>> all() {
        var columns = new ArrayList<>(choice());
        columns.addAll(packings());
        return columns;
    }

    private static List<Column<RankedSpan>> choice() {
        return List.of(
                Column.text(
                        "pull_choice",
                        "choice",
                        "Which innerducts come out, empty and then widest first, and whether dead cables do: the choice "
                                + "that gains most cables an hour. Counts of room and forces are of this one.",
                        row -> room(row).proposal().map(PullChoice::words)),
                Column.text(
                        "other_choices",
                        "choices",
                        "What the other choices would give: cables gained, new cables, and innerducts left that are "
                                + "places; in brackets where the rules do not let it be proposed.",
                        PackingColumns::otherChoices));
    }

    private static List<Column<RankedSpan>> packings() {
        return List.of(
                Column.text(
                        "packing_before",
                        "pack_bef",
                        "Whether the recorded contents go into the bore: fits, does_not_fit (proved) or undecided.",
                        section(s -> s.before().outcome().key())),
                Column.real(
                        "margin_before_mm",
                        "marg_bef",
                        2,
                        "How much narrower the bore could be for them, at least; negative: how much too narrow it is.",
                        section(s -> s.before().marginMm())),
                Column.real(
                        "gap_before_mm",
                        "gap_bef",
                        2,
                        "Where packing_before is undecided: how far apart the bores are that the best arrangement known needs "
                                + "and that the strongest bound demands.",
                        PackingColumns::gapMm),
                Column.text(
                        "packing_after",
                        "pack_aft",
                        "The same for the cables that stay and the new ones; empty where nothing is recovered.",
                        recovered(s -> s.after().outcome().key())),
                Column.real(
                        "margin_after_mm",
                        "marg_aft",
                        2,
                        "The same margin once the new cables are in, besides the bore's allowance.",
                        recovered(s -> s.after().marginMm())),
                Column.text(
                        "next_sleeve",
                        "next_slv",
                        "What is known of one sleeve more where packing is the binding rule.",
                        recovered(s -> s.nextSleeve().map(PackingOutcome::key))),
                Column.real(
                        "jam_ratio",
                        "jam_ratio",
                        2,
                        "1.05 times the bore over the width of three or more equal innerducts in it; 2.8 to 3.2 may jam.",
                        PackingColumns::jamRatio),
                Column.text(
                        "contradiction",
                        "contradict",
                        "Why the recorded contents cannot be true; empty where they can.",
                        row -> room(row).findContradiction()));
    }

    /** Nothing where none is proposed: the reason for that stands elsewhere. */
    private static Optional<String> otherChoices(RankedSpan row) {
        Optional<PullChoice> proposal = room(row).proposal();
        return proposal.flatMap(chosen -> room(row).crossSection())
                .map(section -> section.choices().stream()
                        .filter(choice -> !choice.words().equals(proposal.get().words()))
                        .map(PackingColumns::inShort)
                        .collect(joining("; ")));
    }

    private static String inShort(PullChoice choice) {
        String text = choice.words() + ": +" + choice.cablesGained() + " (" + choice.newCables() + " new, "
                + choice.positionsLeft() + " left)";
        return choice.allowed() ? text : "[" + text + "]";
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

    private static Function<RankedSpan, Object> recovered(Function<CrossSection, Object> cell) {
        return row -> room(row)
                .crossSection()
                .filter(section -> room(row).innerductsOut() > 0)
                .<Object>flatMap(section -> flat(cell.apply(section)));
    }

    private static Optional<?> flat(Object value) {
        return value instanceof Optional<?> optional ? optional : Optional.of(value);
    }

    private static Room room(RankedSpan row) {
        return row.assessment().room();
    }
}
