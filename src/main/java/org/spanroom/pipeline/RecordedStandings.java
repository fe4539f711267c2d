package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.spanroom.finding.InputException;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.columns.RankConfidenceColumns;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.table.Column;

/** Finds what the results of a run say of one span. */
final class RecordedStandings {
    private static final String REMEDY = "Make the run again with this version.";

    private RecordedStandings() {}

    /**
     * Returns where a span stands among all spans of a run.
     *
     * @param folder of the run
     * @param spanId as the results have it
     * @throws InputException if the results cannot be read back or lack the span
     */
    static RecordedStanding find(Path folder, RecordedRun run, String spanId) {
        RecordedSpans spans = RecordedSpans.open(run);
        var types = new ArrayList<Column<?>>(List.of(StandingColumns.SPAN_ID, StandingColumns.RANK));
        types.addAll(RankConfidenceColumns.all());
        int id = spans.columns().indexOf(StandingColumns.SPAN_ID.name());
        int rank = spans.columns().indexOf(StandingColumns.RANK.name());
        int[] sure = RankConfidenceColumns.names().stream()
                .mapToInt(spans.columns()::indexOf)
                .toArray();
        var found = new ArrayList<RecordedSpans.Row>();
        int[] ranked = {0};
        spans.read(types, false, row -> {
            if (!Double.isNaN(row.number(rank))) {
                ranked[0]++;
            }
            if (row.text(id).equals(spanId)) {
                found.add(row);
            }
        });
        return found.stream()
                .findFirst()
                .map(row -> new RecordedStanding(
                        place(row.number(rank)),
                        OptionalInt.of(ranked[0]),
                        row.number(sure[0]),
                        row.number(sure[1]),
                        row.number(sure[2]),
                        row.number(sure[3])))
                .orElseThrow(() ->
                        new InputException(folder, RecordedSpans.FILE + " lacks the span '" + spanId + "'", REMEDY));
    }

    private static OptionalInt place(double rank) {
        return Double.isNaN(rank) ? OptionalInt.empty() : OptionalInt.of((int) rank);
    }
}
