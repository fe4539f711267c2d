package org.spanroom.finding;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Queue;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Collects the findings of a run. Safe for use by several threads; what it returns is in an order that no thread decides.
 *
 * <p>Of each code at most a million are listed, the first in the order of the list, so that one fault on every line of a large network
 * does not fill the memory; how many more there are stands in one further finding for each source. Findings that take a length out of the
 * spans are all listed, for their lengths add up to what is missing.
 */
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

    private static final int MOST_OF_A_CODE = 1_000_000;

    private final Map<FindingCode, OfCode> byCode = new EnumMap<>(FindingCode.class);
    private final int mostOfACode;

    public FindingLog() {
        this(MOST_OF_A_CODE);
    }

    FindingLog(int mostOfACode) {
        this.mostOfACode = mostOfACode;
    }

    /** The findings of one code: those that are listed, and how many more of each source. */
    private static final class OfCode {
        private final List<Finding> withLength = new ArrayList<>();
        private final Map<String, Long> more = new TreeMap<>();
        private Queue<Finding> listed = new ArrayDeque<>();

        private void add(Finding finding, int most) {
            if (finding.lengthM() > 0) {
                withLength.add(finding);
                return;
            }
            listed.add(finding);
            if (listed.size() > most) {
                if (!(listed instanceof PriorityQueue)) {
                    Queue<Finding> lastFirst = new PriorityQueue<>(most + 1, BY_CODE_AND_PLACE.reversed());
                    lastFirst.addAll(listed);
                    listed = lastFirst;
                }
                Finding last = listed.remove();
                more.merge(last.source(), last.count(), Long::sum);
            }
        }

        private Stream<Finding> all(FindingCode code) {
            Stream<Finding> summaries = more.entrySet().stream()
                    .map(source -> Finding.of(
                                    code, source.getKey(), "", source.getValue() + " more of this kind, not listed")
                            .standingFor(source.getValue()));
            return Stream.of(withLength.stream(), listed.stream(), summaries).flatMap(every -> every);
        }

        private long count() {
            return Stream.concat(withLength.stream(), listed.stream())
                            .mapToLong(Finding::count)
                            .sum()
                    + more.values().stream().mapToLong(Long::longValue).sum();
        }
    }

    public synchronized void add(Finding finding) {
        byCode.computeIfAbsent(finding.code(), code -> new OfCode()).add(finding, mostOfACode);
    }

    /** Returns all findings, by code, then source, feature and detail. */
    public synchronized List<Finding> all() {
        return byCode.entrySet().stream()
                .flatMap(ofCode -> ofCode.getValue().all(ofCode.getKey()))
                .sorted(BY_CODE_AND_PLACE)
                .toList();
    }

    /** Returns how many problems there are of each code that occurred; one finding may represent many. */
    public synchronized Map<FindingCode, Long> countByCode() {
        var counts = new EnumMap<FindingCode, Long>(FindingCode.class);
        byCode.forEach((code, ofCode) -> counts.put(code, ofCode.count()));
        return counts;
    }

    /** Returns how many problems are more than a note. */
    public synchronized long countToFix() {
        return byCode.entrySet().stream()
                .filter(ofCode -> ofCode.getKey().severity() != Severity.NOTE)
                .mapToLong(ofCode -> ofCode.getValue().count())
                .sum();
    }
}
