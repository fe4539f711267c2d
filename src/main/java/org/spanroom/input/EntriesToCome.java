package org.spanroom.input;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.fieldbook.FieldBookReader;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;

/**
 * Looks for entries of a field book that are dated after the run date.
 *
 * <p>They count: what counts is decided by {@code as_of} alone, and a run date that was left behind must not take away what crews have
 * done. So each is a finding, as a day that was mistyped looks the same.
 */
record EntriesToCome(Optional<LocalDate> runDate, Optional<LocalDate> asOf) {
    static EntriesToCome of(RunConfig config) {
        return new EntriesToCome(
                config.permit().findOnDate(), config.inputs().fieldBook().findAsOf());
    }

    void report(FieldBookReader.Read read, String source, CappedLog log) {
        if (runDate.isEmpty()) {
            return;
        }
        LocalDate today = runDate.get();
        FieldBook counted = asOf.map(read.book()::asOf).orElse(read.book());
        Stream<FieldEntry> ofSpans = counted.spans().stream().flatMap(span -> counted.ofSpan(span).stream());
        Stream<FieldEntry> ofVaults = counted.vaults().stream().flatMap(vault -> counted.ofVault(vault).stream());
        Stream.concat(ofSpans, ofVaults)
                .filter(entry -> entry.day().isAfter(today))
                .sorted(Comparator.comparingInt(FieldEntry::number))
                .forEach(entry -> log.add(Finding.of(
                                FindingCode.FIELD_ENTRY_LATER,
                                source,
                                "entry " + entry.number(),
                                "line " + read.lines().getOrDefault(entry.number(), 0L) + ": "
                                        + entry.fact().key()
                                        + " of " + entry.subject() + " is dated " + entry.day()
                                        + ", after the run date " + today
                                        + ", and counts. If the day is wrong, correct it by a"
                                        + " new row that names entry " + entry.number()
                                        + " in supersedes; else set on_date to that day or later, or leave out what is"
                                        + " later with as_of")
                        .inField("date")));
    }
}
