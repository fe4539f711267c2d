package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.spanroom.finding.InputException;
import org.spanroom.input.RecordedRow;
import org.spanroom.input.RecordedTable;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.ResultTables;
import org.spanroom.output.columns.RankConfidenceColumns;
import org.spanroom.output.columns.StandingColumns;

/** Finds what the results of a run say of one span. */
final class RecordedSpans {
    private static final String REMEDY = "Make the run again with this version.";
    private static final List<String> COLUMNS = Stream.concat(
                    Stream.of(StandingColumns.SPAN_ID.name(), StandingColumns.RANK.name()),
                    RankConfidenceColumns.names().stream())
            .toList();

    private RecordedSpans() {}

    /**
     * Returns where a span stands by the table of spans in a folder; unknown where the run wrote none that can be read back.
     *
     * @param spanId as the table has it
     * @throws InputException if no span of that id is in the table
     */
    static RecordedStanding find(Path folder, String spanId) {
        var found = new ArrayList<RecordedRow>();
        int[] ranked = {0};
        String table = ResultTables.SPANS.name();
        Path geoPackage = folder.resolve(RecordedRun.GEOPACKAGE);
        boolean isThere = RecordedTable.read(geoPackage, folder.resolve(table + ".csv"), table, COLUMNS, row -> {
            if (!Double.isNaN(row.number(1))) {
                ranked[0]++;
            }
            if (row.text(0).equals(spanId)) {
                found.add(row);
            }
        });
        if (!isThere) {
            return RecordedStanding.UNKNOWN;
        }
        return found.stream()
                .findFirst()
                .map(row -> standing(row, ranked[0]))
                .orElseThrow(
                        () -> new InputException(folder, "its table of spans lacks the span '" + spanId + "'", REMEDY));
    }

    private static RecordedStanding standing(RecordedRow row, int spansRanked) {
        double rank = row.number(1);
        return new RecordedStanding(
                Double.isNaN(rank) ? OptionalInt.empty() : OptionalInt.of((int) rank),
                OptionalInt.of(spansRanked),
                row.number(2),
                row.number(3),
                row.number(4),
                row.number(5));
    }
}
