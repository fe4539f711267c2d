package org.spanroom.output;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.RankTotals;

/**
 * What the record of a run says of its results.
 *
 * @param run what went in
 * @param rescoredFrom the folder of the run that the spans were read back from, where another scoring was tried on it
 * @param filter what the spans that are written were asked to be; empty where all are
 * @param kept the owner's own fields that the totals have sums of, in their order
 * @param rows how many rows each table has, in the order of the list of tables
 * @param totals counts and sums over the spans
 * @param money what all spans that have a rank cost and save together
 * @param contents what the results rest on, so far as it concerns what lies in the ducts
 * @param outputCrs name of the reference system of the layers
 * @param outputSystem that system
 * @param notes what the user should know of the files
 */
record RunAccount(
        RunRecord run,
        Optional<String> rescoredFrom,
        Map<String, String> filter,
        List<String> kept,
        Map<String, Long> rows,
        RankTotals totals,
        MoneyTotals money,
        ContentsAccount contents,
        NetworkLengths lengths,
        FindingTally findings,
        String outputCrs,
        ReferenceSystem outputSystem,
        List<String> notes) {
    RunAccount {
        filter = Collections.unmodifiableMap(new LinkedHashMap<>(filter));
        rows = Collections.unmodifiableMap(new LinkedHashMap<>(rows));
        notes = List.copyOf(notes);
        kept = List.copyOf(kept);
    }

    /** Returns how many spans are written. */
    long spansKept() {
        return rows.getOrDefault(ResultTables.SPANS.name(), 0L);
    }
}
