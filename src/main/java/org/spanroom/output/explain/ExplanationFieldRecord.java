package org.spanroom.output.explain;

import java.time.LocalDate;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.network.FieldRecord;

/** What crews reported of a span, where they did. */
final class ExplanationFieldRecord {
    private ExplanationFieldRecord() {}

    static void add(ExplanationParts parts, FieldRecord record) {
        if (record.isEmpty()) {
            return;
        }
        parts.add(new ExplanationParts()
                .word(
                        "work_status",
                        "work",
                        record.status().map(WorkStatus::key).orElse(""))
                .text(
                        "work_status_day",
                        "reported on",
                        record.statusDay().map(LocalDate::toString).orElse(""))
                .text("status_reason", "reason", record.statusReason())
                .number("blocked_at_m", "blocked at", record.blockedAtM().orElse(Double.NaN), 1, "m")
                .text("blocked_from", "measured from vault", record.blockedFrom())
                .texts(
                        "entries",
                        "rests on entries",
                        record.entries().stream().map(String::valueOf).toList())
                .section("field_book", "Field book"));
    }
}
