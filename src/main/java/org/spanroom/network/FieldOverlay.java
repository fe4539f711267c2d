package org.spanroom.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Counted;
import org.spanroom.model.fieldwork.FactItem;
import org.spanroom.model.fieldwork.FactUse;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.network.SpanName;
import org.spanroom.model.network.Vault;

/**
 * Lays a field book over the data: what crews found and did replaces what is recorded, for the spans and vaults that its entries name.
 *
 * <p>A span counts under its name in the data or in the results, and under that of its line drawn the other way around, where the ends a
 * and b of its entries change places. Entries about what the data does not have are reported, once for each span or vault.
 */
public final class FieldOverlay {
    private static final int MOST_LISTED = 5;

    private final FieldBook book;
    private final FieldChanges changes;
    private final UnaryOperator<String> shown;
    private final FindingLog findings;
    private final String source;

    /**
     * Prepares for a network.
     *
     * @param shown the name of a span or vault as the results write it
     * @param source the words that findings use for the field book
     */
    public FieldOverlay(
            FieldBook book, FieldChanges changes, UnaryOperator<String> shown, FindingLog findings, String source) {
        this.book = book;
        this.changes = changes;
        this.shown = shown;
        this.findings = findings;
        this.source = source;
    }

    /** Returns the vaults with what crews found there. */
    public List<Vault> vaults(List<Vault> vaults) {
        if (book.vaults().isEmpty()) {
            return vaults;
        }
        Set<String> missing = new TreeSet<>(book.vaults());
        List<Vault> applied = vaults.stream()
                .map(vault -> {
                    String id = book.vaults().contains(vault.id()) ? vault.id() : shown.apply(vault.id());
                    if (!book.vaults().contains(id)) {
                        return vault;
                    }
                    missing.remove(id);
                    return FieldVaults.apply(vault, book.ofVault(id));
                })
                .toList();
        missing.stream()
                .filter(id ->
                        book.ofVault(id).stream().anyMatch(entry -> entry.fact().use() == FactUse.VAULT))
                .forEach(id -> unmatched("vault", id, book.ofVault(id), List.of()));
        return applied;
    }

    /** Returns the network with the ducts of its spans as crews found and left them. */
    public Network spans(Network network) {
        Set<String> missing = new TreeSet<>();
        for (String id : book.spans()) {
            if (book.ofSpan(id).stream().anyMatch(FieldOverlay::changesSpan)) {
                missing.add(id);
            }
        }
        if (missing.isEmpty()) {
            return network;
        }
        SpanList spans = network.spans();
        Map<Integer, FieldChanges.Applied> changed = new HashMap<>();
        Map<String, List<String>> sameDuct = new HashMap<>();
        for (Map.Entry<Integer, Match> found : matches(spans, missing, sameDuct).entrySet()) {
            changed.put(found.getKey(), applied(spans.get(found.getKey()), found.getValue()));
        }
        missing.forEach(id -> unmatched(
                "span",
                id,
                book.ofSpan(id),
                SpanName.parse(id)
                        .map(name -> sameDuct.getOrDefault(name.ductId(), List.of()))
                        .orElse(List.of())));
        return changed.isEmpty()
                ? network
                : new Network(
                        new FieldSpans(spans, changed),
                        network.vaults(),
                        network.routeLengthM(),
                        network.spanLengthM(),
                        network.remainderLengthM());
    }

    private static boolean changesSpan(FieldEntry entry) {
        return entry.fact().use() == FactUse.STATUS || entry.fact().use() == FactUse.DUCT;
    }

    /** A span of the data under a name of the book. */
    private record Match(String bookId, boolean turned) {}

    /** Finds the spans that the book names, and takes their names from those that are missing. */
    private Map<Integer, Match> matches(SpanList spans, Set<String> missing, Map<String, List<String>> sameDuct) {
        Set<String> wanted = new HashSet<>(missing);
        Map<String, String> turned = new HashMap<>();
        Set<String> ducts = new HashSet<>();
        wanted.forEach(id -> SpanName.parse(id).ifPresent(name -> {
            ducts.add(name.ductId());
            turned.put(new SpanName(name.ductId(), name.vaultB(), name.vaultA(), name.number()).toString(), id);
        }));
        Map<Integer, Match> found = new HashMap<>();
        Map<Integer, Match> foundTurned = new HashMap<>();
        for (int number = 0; number < spans.size(); number++) {
            String duct = spans.duct(number).id();
            if (!ducts.contains(duct) && !ducts.contains(shown.apply(duct))) {
                continue;
            }
            String id = spans.id(number);
            String name = wanted.contains(id) || turned.containsKey(id) ? id : shown.apply(id);
            sameDuct.computeIfAbsent(shown.apply(duct), key -> new ArrayList<>())
                    .add(shown.apply(id));
            if (wanted.contains(name)) {
                found.put(number, new Match(name, false));
            } else if (turned.containsKey(name)) {
                foundTurned.put(number, new Match(turned.get(name), true));
            }
        }
        found.values().forEach(match -> missing.remove(match.bookId()));
        foundTurned.forEach((number, match) -> {
            if (missing.remove(match.bookId())) {
                found.put(number, match);
            }
        });
        return found;
    }

    private FieldChanges.Applied applied(Span span, Match match) {
        List<FieldEntry> entries = book.ofSpan(match.bookId()).stream()
                .map(entry -> match.turned() ? turned(entry) : entry)
                .toList();
        FieldChanges.Applied applied = changes.apply(span, entries);
        applied.problems()
                .forEach(problem -> findings.add(Finding.of(problem.code(), source, span.id(), problem.detail())
                        .at(span.lonLat().x(0), span.lonLat().y(0))));
        return applied;
    }

    /** Returns an entry as it reads where the ends of the span have changed places. */
    private static FieldEntry turned(FieldEntry entry) {
        FactItem item = entry.fact().item();
        if (item != FactItem.END && item != FactItem.INNERDUCT_AT_END && item != FactItem.CABLE_AT_END) {
            return entry;
        }
        int last = entry.item().length() - 1;
        String end = entry.item().substring(last).equals("a") ? "b" : "a";
        return entry.withItem(entry.item().substring(0, last) + end);
    }

    private void unmatched(String thing, String id, List<FieldEntry> entries, List<String> near) {
        String numbers = entries.stream()
                .limit(MOST_LISTED)
                .map(entry -> Integer.toString(entry.number()))
                .collect(Collectors.joining(", "));
        String more = entries.size() > MOST_LISTED ? " and " + (entries.size() - MOST_LISTED) + " more" : "";
        String others = near.isEmpty()
                ? ""
                : "; spans of that duct are " + near.stream().limit(MOST_LISTED).collect(Collectors.joining(", "));
        findings.add(Finding.of(
                FindingCode.FIELD_ENTRY_UNMATCHED,
                source,
                id,
                Counted.form(entries.size(), "entry ", "entries ") + numbers + more + ": no " + thing
                        + " of the data has this id" + others + ". If it was renamed, report the facts for the new id, "
                        + "with the numbers of these entries in supersedes"));
    }
}
