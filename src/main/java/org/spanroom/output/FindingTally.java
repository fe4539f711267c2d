package org.spanroom.output;

import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import org.spanroom.finding.Finding;
import org.spanroom.output.columns.FindingColumns;

/** How many problems of the data a run found, by the words of the columns {@code severity} and {@code code}. */
final class FindingTally {
    private final SortedMap<String, Long> bySeverity = new TreeMap<>();
    private final SortedMap<String, Long> byCode = new TreeMap<>();
    private long total;

    private void add(String severity, String code, long count) {
        total += count;
        bySeverity.merge(severity, count, Long::sum);
        byCode.merge(code, count, Long::sum);
    }

    static FindingTally of(List<Finding> findings) {
        var tally = new FindingTally();
        for (Finding finding : findings) {
            String severity = finding.code().severity().name().toLowerCase(Locale.ROOT);
            tally.add(severity, finding.code().key(), finding.count());
        }
        return tally;
    }

    /** Counts what the findings of an earlier run stand for. */
    static FindingTally of(CopiedTable findings) {
        var tally = new FindingTally();
        int severity = findings.place(FindingColumns.SEVERITY);
        int code = findings.place(FindingColumns.CODE);
        int count = findings.place(FindingColumns.COUNT);
        for (CopiedTable.Row row : findings.rows()) {
            tally.add(CopiedTable.text(row, severity), CopiedTable.text(row, code), (long)
                    CopiedTable.number(row, count));
        }
        return tally;
    }

    long total() {
        return total;
    }

    SortedMap<String, Long> bySeverity() {
        return Collections.unmodifiableSortedMap(bySeverity);
    }

    SortedMap<String, Long> byCode() {
        return Collections.unmodifiableSortedMap(byCode);
    }
}
