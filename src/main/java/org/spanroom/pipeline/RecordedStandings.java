package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import org.spanroom.finding.InputException;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.columns.RankConfidenceColumns;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.table.Column;

/** Finds what the results of a run say of some of its spans. */
final class RecordedStandings {
    private static final String REMEDY = "Make the run again with this version.";

    private RecordedStandings() {}

    /**
     * Returns the standing of spans among all spans of a run, in the order of the ids.
     *
     * @param folder of the run
     * @param spanIds as the results have them
     * @throws InputException if the results cannot be read back or lack a span
     */
    static List<RecordedStanding> find(Path folder, RecordedRun run, List<String> spanIds) {
        var found = new HashMap<String, RecordedStanding>();
        Set<String> wanted = Set.copyOf(spanIds);
        int[] ranked = {0};
        read(run, (id, row) -> {
            ranked[0] += row.rank().isPresent() ? 1 : 0;
            if (wanted.contains(id)) {
                found.putIfAbsent(id, row);
            }
        });
        return spanIds.stream()
                .map(id -> Optional.ofNullable(found.get(id)).orElseThrow(() -> noSuchSpan(folder, id)))
                .map(standing -> standing.among(ranked[0]))
                .toList();
    }

    /**
     * Returns the ids of the spans at some ranks, in the order of the ranks given.
     *
     * @throws InputException if the results cannot be read back, or no span has one of the ranks
     */
    static List<String> idsAt(Path folder, RecordedRun run, List<Integer> ranks) {
        var ids = new TreeMap<Integer, String>();
        read(run, (id, standing) -> standing.rank().ifPresent(rank -> ids.putIfAbsent(rank, id)));
        return ranks.stream()
                .map(rank -> Optional.ofNullable(ids.get(rank)).orElseThrow(() -> noSuchRank(folder, rank, ids)))
                .toList();
    }

    /**
     * Returns the ids of the best spans of a run, in the order of their ranks; fewer where it has fewer ranked ones.
     *
     * @throws InputException if the results cannot be read back
     */
    static List<String> best(RecordedRun run, int count) {
        var ids = new TreeMap<Integer, String>();
        read(
                run,
                (id, standing) -> standing.rank().ifPresent(rank -> {
                    ids.putIfAbsent(rank, id);
                    if (ids.size() > count) {
                        ids.pollLastEntry();
                    }
                }));
        return List.copyOf(ids.values());
    }

    /**
     * Returns the ranks of spans, 0 for one that is excluded; the run lacks those that are not among the keys.
     *
     * @throws InputException if the results cannot be read back
     */
    static Map<String, Integer> ranks(RecordedRun run, Set<String> spanIds) {
        var ranks = new HashMap<String, Integer>();
        read(run, (id, standing) -> {
            if (spanIds.contains(id)) {
                ranks.putIfAbsent(id, standing.rank().orElse(0));
            }
        });
        return ranks;
    }

    private static InputException noSuchSpan(Path folder, String spanId) {
        return new InputException(folder, RecordedSpans.FILE + " lacks the span '" + spanId + "'", REMEDY);
    }

    private static InputException noSuchRank(Path folder, int rank, SortedMap<Integer, String> ids) {
        String problem = "no span has rank " + rank;
        return ids.isEmpty()
                ? new InputException(folder, problem + "; the run has no ranked span", "Name spans by their ids.")
                : new InputException(
                        folder,
                        problem + "; the run has " + ids.size() + " ranks",
                        "Give ranks from " + ids.firstKey() + " to " + ids.lastKey() + ".");
    }

    private static void read(RecordedRun run, BiConsumer<String, RecordedStanding> sink) {
        RecordedSpans spans = RecordedScores.open(run);
        var types = new ArrayList<Column<?>>(List.of(StandingColumns.SPAN_ID, StandingColumns.RANK));
        types.addAll(RankConfidenceColumns.all());
        int id = spans.columns().indexOf(StandingColumns.SPAN_ID.name());
        int rank = spans.columns().indexOf(StandingColumns.RANK.name());
        int[] sure = RankConfidenceColumns.names().stream()
                .mapToInt(spans.columns()::indexOf)
                .toArray();
        spans.read(
                types,
                false,
                row -> sink.accept(
                        row.text(id),
                        new RecordedStanding(
                                place(row.number(rank)),
                                0,
                                row.number(sure[0]),
                                row.number(sure[1]),
                                row.number(sure[2]),
                                row.number(sure[3]))));
    }

    private static OptionalInt place(double rank) {
        return Double.isNaN(rank) ? OptionalInt.empty() : OptionalInt.of((int) rank);
    }
}
