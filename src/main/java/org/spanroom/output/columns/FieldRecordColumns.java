package org.spanroom.output.columns;

import static java.util.stream.Collectors.joining;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.network.FieldRecord;
import org.spanroom.model.network.Span;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of the spans that only a run with a field book has. */
public final class FieldRecordColumns {
    /** The numbers of the entries that a span rests on, joined by ;. */
    public static final Column<RankedSpan> ENTRIES = Column.text(
            "field_entries",
            "field_ent",
            "Numbers of the entries of the field book that the span rests on, joined by ;. Only where the run has a field book.",
            reported(record -> record.entries().stream().map(String::valueOf).collect(joining(";"))));

    private FieldRecordColumns() {}

    static List<Column<RankedSpan>> all() {
        return List.of(
                Column.text(
                        "work_status",
                        "work_stat",
                        CellRange.oneOf(Stream.of(WorkStatus.values()).map(WorkStatus::key)),
                        "How far the work on the span is, as reported in the field book: planned, permitted, in_work, done or "
                                + "stopped. A core column where the run has a field book, and only there.",
                        reported(record -> record.status().map(WorkStatus::key))),
                Column.text(
                        "work_status_day",
                        "work_day",
                        CellRange.DAY,
                        "Day on which work_status was reported. Only where the run has a field book.",
                        reported(record -> record.statusDay().map(String::valueOf))),
                Column.real(
                        "blocked_at_m",
                        "blocked_m",
                        1,
                        CellRange.AMOUNT,
                        "Distance of a reported obstruction from vault_a along the span; of one that was measured from vault_b, the "
                                + "length less that distance. Only where the run has a field book.",
                        row -> blockedFromAM(row.span())),
                ENTRIES);
    }

    private static OptionalDouble blockedFromAM(Span span) {
        FieldRecord record = span.duct().fieldRecord();
        boolean fromB = record.blockedFrom().equals(span.to().id())
                && !record.blockedFrom().equals(span.from().id());
        return record.blockedAtM().isPresent() && fromB
                ? OptionalDouble.of(
                        Math.max(0, span.lengthM() - record.blockedAtM().getAsDouble()))
                : record.blockedAtM();
    }

    private static Function<RankedSpan, Object> reported(Function<FieldRecord, Object> cell) {
        return row -> cell.apply(row.span().duct().fieldRecord());
    }
}
