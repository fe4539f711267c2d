package org.spanroom.model.fieldwork;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The field book: all facts that crews reported, those that later entries correct left out. Of several entries of one fact the one of
 * the latest day counts, of one day the one that was entered last.
 */
public final class FieldBook {
    private static final Comparator<FieldEntry> IN_TIME =
            Comparator.comparing(FieldEntry::day).thenComparingInt(FieldEntry::number);

    /** Nothing is reported. Below the order, which it needs. */
    public static final FieldBook EMPTY = new FieldBook(List.of());

    private final List<FieldEntry> all;
    private final Map<String, List<FieldEntry>> bySpan;
    private final Map<String, List<FieldEntry>> byVault;

    /**
     * Makes a book.
     *
     * @param entries all of it, in any order
     */
    public FieldBook(List<FieldEntry> entries) {
        all = List.copyOf(entries);
        Set<Integer> corrected = new HashSet<>();
        all.forEach(entry -> entry.supersedes().ifPresent(corrected::add));
        List<FieldEntry> standing = all.stream()
                .filter(entry -> !corrected.contains(entry.number()))
                .sorted(IN_TIME)
                .toList();
        bySpan = bySubject(standing, FactSubject.SPAN);
        byVault = bySubject(standing, FactSubject.VAULT);
    }

    private static Map<String, List<FieldEntry>> bySubject(List<FieldEntry> entries, FactSubject subject) {
        return entries.stream()
                .filter(entry -> entry.fact().subject() == subject)
                .collect(Collectors.groupingBy(FieldEntry::subject, LinkedHashMap::new, Collectors.toList()));
    }

    /** Returns every entry, corrected ones too, in the order given. */
    public List<FieldEntry> all() {
        return all;
    }

    public boolean isEmpty() {
        return all.isEmpty();
    }

    /** Returns the book as it was at the end of a day: entries of later days, and corrections by them, left out. */
    public FieldBook asOf(LocalDate day) {
        return new FieldBook(
                all.stream().filter(entry -> !entry.day().isAfter(day)).toList());
    }

    /** Returns the ids of the spans that entries that count are about, in the order of their first entries. */
    public Set<String> spans() {
        return bySpan.keySet();
    }

    /** Returns the ids of the vaults that entries that count are about. */
    public Set<String> vaults() {
        return byVault.keySet();
    }

    /** Returns the entries of a span that count, in the order of days; of each fact and item the last one is in force. */
    public List<FieldEntry> ofSpan(String spanId) {
        return bySpan.getOrDefault(spanId, List.of());
    }

    /** Returns the entries of a vault that count, in the order of days. */
    public List<FieldEntry> ofVault(String vaultId) {
        return byVault.getOrDefault(vaultId, List.of());
    }

    /** Returns the entry of a fact that is in force among entries in the order of days. */
    public static Optional<FieldEntry> find(List<FieldEntry> entries, FieldFact fact, String item) {
        return entries.stream()
                .filter(entry -> entry.fact() == fact && entry.item().equals(item))
                .reduce((earlier, later) -> later);
    }

    /** Returns the status of the work on a span; empty where none is reported. */
    public Optional<WorkStatus> statusOf(String spanId) {
        return find(ofSpan(spanId), FieldFact.STATUS, "")
                .flatMap(entry -> WorkStatus.find(entry.value().text()));
    }
}
