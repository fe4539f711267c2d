package org.spanroom.output;

import static java.util.stream.Collectors.joining;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;
import org.spanroom.model.Circumstances;
import org.spanroom.model.Exclusion;
import org.spanroom.model.RankedSpan;

/** The columns of the spans that tell why one is not ranked, and what to bear in mind before work. */
final class VerdictColumns {
    private VerdictColumns() {}

    static List<Column<RankedSpan>> all() {
        return List.of(
                Column.text(
                        "exclusion",
                        "exclusion",
                        "Why the span is not ranked, as a key; empty if it is. Of several reasons the most basic one.",
                        row -> row.verdict().findFirst().map(Exclusion::key)),
                Column.text(
                        "exclusion_why",
                        "excl_why",
                        "The same in words.",
                        row -> row.verdict().findFirst().map(Exclusion::explanation)),
                Column.text(
                        "exclusions",
                        "excl_all",
                        "Every reason why the span is not ranked, joined by ;.",
                        row -> row.verdict().exclusions().stream()
                                .map(Exclusion::key)
                                .collect(joining(";"))),
                Column.text(
                        "cautions",
                        "cautions",
                        "What to bear in mind before work, as keys joined by ;, the reasons whose gate is open first.",
                        row -> String.join(";", row.verdict().cautionKeys())),
                Column.integer(
                        "circuits_at_risk",
                        "circuits",
                        "How many circuits the cables carry, as recorded.",
                        recorded(Circumstances::circuitsAtRisk)),
                Column.text(
                        "joint_owners",
                        "joint_own",
                        "Who else owns the duct, as recorded.",
                        recorded(Circumstances::jointOwners)),
                Column.text(
                        "embargo_until",
                        "embargo",
                        "Last day on which no work may disturb the cables, as 2027-03-31.",
                        recorded(c -> c.embargoUntil().map(LocalDate::toString))));
    }

    private static Function<RankedSpan, Object> recorded(Function<Circumstances, Object> cell) {
        return row -> cell.apply(row.span().duct().circumstances());
    }
}
