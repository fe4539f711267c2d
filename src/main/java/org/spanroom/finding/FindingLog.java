package org.spanroom.finding;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Collects the findings of a run. Safe for use by several threads; what it returns is in an order that no thread decides. */
public final class FindingLog {
    private static final Comparator<Finding> BY_CODE_AND_PLACE = Comparator.comparing(Finding::code)
            .thenComparing(Finding::source)
            .thenComparing(Finding::featureId)
            .thenComparing(Finding::field)
            .thenComparing(Finding::detail)
            .thenComparing(finding -> finding.place().map(Place::lonDeg).orElse(0.0))
            .thenComparing(finding -> finding.place().map(Place::latDeg).orElse(0.0))
            .thenComparing(Finding::lengthM)
            .thenComparing(Finding::count);

    private final List<Finding> findings = new ArrayList<>();

    public synchronized void add(Finding finding) {
        findings.add(finding);
    }

    /** Returns all findings, by code, then source, feature and detail. */
    public synchronized List<Finding> all() {
        return findings.stream().sorted(BY_CODE_AND_PLACE).toList();
    }

    /** Returns how many problems there are of each code that occurred; one finding may stand for many. */
    public synchronized Map<FindingCode, Long> countByCode() {
        var counts = new EnumMap<FindingCode, Long>(FindingCode.class);
        findings.forEach(finding -> counts.merge(finding.code(), finding.count(), Long::sum));
        return counts;
    }

    /** Returns how many problems are more than a note. */
    public synchronized long countToMend() {
        return findings.stream()
                .filter(finding -> finding.code().severity() != Severity.NOTE)
                .mapToLong(Finding::count)
                .sum();
    }
}
