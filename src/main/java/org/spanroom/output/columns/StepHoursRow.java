package org.spanroom.output.columns;

import java.util.Arrays;
import java.util.List;
import org.spanroom.model.effort.EffortStep;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** The hours on site of one step of the work on one span, as a row. */
public record StepHoursRow(String spanId, EffortStep step, double siteHours) {
    public static final Table<StepHoursRow> TABLE = Table.plain(
            "step_hours",
            "One row for each step of the work on a span, in the order of the work, span by span in the order of the ranking.",
            List.of(
                    Column.text("span_id", "span_id", "The span.", StepHoursRow::spanId),
                    Column.text("step", "step", "The step.", row -> row.step().key()),
                    Column.real(
                            "site_hours", "site_h", 2, "Hours on site, over all shifts.", StepHoursRow::siteHours)));

    /** Returns a span's steps that take time. */
    public static List<StepHoursRow> of(RankedSpan span) {
        return span.assessment()
                .effort()
                .map(effort -> Arrays.stream(EffortStep.values())
                        .map(step -> new StepHoursRow(
                                span.spanId(), step, effort.stepHours().of(step)))
                        .filter(row -> row.siteHours() > 0)
                        .toList())
                .orElse(List.of());
    }
}
