package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.spanroom.finding.InputException;
import org.spanroom.input.RecordedRow;
import org.spanroom.input.RecordedTable;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.ResultTables;
import org.spanroom.output.columns.RankConfidenceColumns;
import org.spanroom.output.columns.StandingColumns;

/** Finds what the results of a run say of some of its spans. */
final class RecordedSpans {
    private static final String REMEDY = "Make the run again with this version.";
    private static final List<String> COLUMNS = Stream.concat(
                    Stream.of(StandingColumns.SPAN_ID.name(), StandingColumns.RANK.name()),
                    RankConfidenceColumns.names().stream())
            .toList();

    private RecordedSpans() {}

    /**
     * Returns where spans stand by the table of spans in a folder; unknown where the run wrote none that can be read back.
     *
     * @param spanIds as the table has them
     * @throws InputException if a span is not in the table
     */
    static Map<String, RecordedStanding> find(Path folder, Collection<String> spanIds) {
        var found = new HashMap<String, RecordedRow>();
        Set<String> wanted = Set.copyOf(spanIds);
        int[] ranked = {0};
        boolean isThere = read(folder, row -> {
            if (!Double.isNaN(row.number(1))) {
                ranked[0]++;
            }
            if (wanted.contains(row.text(0))) {
                found.putIfAbsent(row.text(0), row);
            }
        });
        var standings = new HashMap<String, RecordedStanding>();
        for (String spanId : wanted) {
            RecordedRow row = found.get(spanId);
            if (isThere && row == null) {
                throw new InputException(folder, "its table of spans lacks the span '" + spanId + "'", REMEDY);
            }
            standings.put(spanId, row == null ? RecordedStanding.UNKNOWN : standing(row, ranked[0]));
        }
        return standings;
    }

    /**
     * Returns the ids of the spans at some ranks, in the order of the ranks given.
     *
     * @throws InputException if the run wrote no table that can be read back, or none of its spans has one of the ranks
     */
    static List<String> idsAt(Path folder, List<Integer> ranks) {
        var ids = new TreeMap<Integer, String>();
        boolean isThere = read(folder, row -> {
            if (!Double.isNaN(row.number(1))) {
                ids.putIfAbsent((int) row.number(1), row.text(0));
            }
        });
        if (!isThere) {
            throw new InputException(
                    folder, "the run wrote no table of spans that can be read back", "Name spans by their ids.");
        }
        return ranks.stream()
                .map(rank -> Optional.ofNullable(ids.get(rank)).orElseThrow(() -> noSuchRank(folder, rank, ids)))
                .toList();
    }

    private static InputException noSuchRank(Path folder, int rank, SortedMap<Integer, String> ids) {
        String problem = "no span has rank " + rank;
        return ids.isEmpty()
                ? new InputException(folder, problem + "; the table of spans has no ranked span", "Name spans by their ids.")
                : new InputException(
                        folder,
                        problem + "; the table of spans has " + ids.size() + " ranks",
                        "Give ranks from " + ids.firstKey() + " to " + ids.lastKey() + ".");
    }

    private static boolean read(Path folder, Consumer<RecordedRow> sink) {
        String table = ResultTables.SPANS.name();
        return RecordedTable.read(
                folder.resolve(RecordedRun.GEOPACKAGE), folder.resolve(table + ".csv"), table, COLUMNS, sink);
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
