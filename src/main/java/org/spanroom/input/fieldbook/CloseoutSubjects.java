package org.spanroom.input.fieldbook;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.config.NearestWord;
import org.spanroom.model.fieldwork.FactSubject;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.SheetCode;
import org.spanroom.model.network.SpanName;

/** Finds what a row of a close-out file is about: a span or vault of the run, and an earlier entry. */
final class CloseoutSubjects {
    private static final int NEAREST = 3;

    /** All names are compared for so many wrong ones, and where there are no more names than this. */
    private static final int MOST_SEARCHES = 20;

    private static final int MOST_NAMES = 50_000;

    private final CloseoutScope scope;
    private final Map<Integer, FieldEntry> byNumber = new HashMap<>();
    private final Map<Integer, Integer> correctedBy = new HashMap<>();
    private final Map<Integer, Long> correctedInLine = new HashMap<>();
    private int searches;

    CloseoutSubjects(CloseoutScope scope) {
        this.scope = scope;
        scope.book().all().forEach(entry -> {
            byNumber.put(entry.number(), entry);
            entry.supersedes().ifPresent(corrected -> correctedBy.put(corrected, entry.number()));
        });
    }

    /** Returns the code of a row; empty where it has none that can be read. A code that is wrong is a problem of the row. */
    Optional<SheetCode> code(FactReader.Row row) {
        String text = row.cell("code");
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Optional<SheetCode> code = SheetCode.parse(text);
        if (code.isEmpty()) {
            row.reject("code", "'" + text + "' is not the code of a page", "Leave it empty, and name the span.");
        } else if (!code.get().run().equals(scope.runCode())) {
            row.reject(
                    "code",
                    "the page is of the run " + code.get().run() + ", and --run names " + scope.runCode(),
                    "Give the folder of that run with --run.");
        }
        return code;
    }

    /** Returns the id of the span or vault; empty where there is none, and the row then has a problem. */
    Optional<String> of(FactReader.Row row, FieldFact fact) {
        Optional<SheetCode> code = code(row);
        String span = row.cell("span");
        String coded = code.map(SheetCode::span).orElse("");
        if (!span.isEmpty() && !coded.isEmpty() && !span.equals(coded)) {
            row.reject(
                    "span",
                    "the row names '" + span + "', and its code the span '" + coded + "'",
                    "Correct the one that is wrong, or leave the code empty.");
            return Optional.empty();
        }
        return fact.subject() == FactSubject.SPAN ? span(row, span.isEmpty() ? coded : span) : vault(row, fact);
    }

    private Optional<String> span(FactReader.Row row, String span) {
        if (span.isEmpty()) {
            row.reject("span", "no span is named, nor does a code name one", "Name it as the results do.");
            return Optional.empty();
        }
        CloseoutScope.Ends ends = scope.spans().get(span);
        if (ends == null) {
            row.reject("span", "the run has no span '" + span + "'", nearest(span, spansLike(span)));
            return Optional.empty();
        }
        String vault = row.cell("vault");
        if (!vault.isEmpty() && !vault.equals(ends.vaultA()) && !vault.equals(ends.vaultB())) {
            row.reject(
                    "vault",
                    "the span is between " + ends.vaultA() + " and " + ends.vaultB() + ", not at '" + vault + "'",
                    "Leave it empty for a fact of a span.");
        }
        return Optional.of(span);
    }

    private Optional<String> vault(FactReader.Row row, FieldFact fact) {
        String vault = row.cell("vault");
        if (vault.isEmpty()) {
            row.reject("vault", fact.key() + " is about a vault, and none is named", "Name it as the results do.");
            return Optional.empty();
        }
        if (!scope.vaults().contains(vault)) {
            row.reject("vault", "no span of the run ends at a vault '" + vault + "'", nearest(vault, scope.vaults()));
            return Optional.empty();
        }
        return Optional.of(vault);
    }

    /** Returns the spans of the same duct, or all where there is none. */
    private Collection<String> spansLike(String span) {
        String start = SpanName.parse(span)
                .map(name -> SpanName.escaped(name.ductId()) + ":")
                .orElse(span);
        List<String> same = scope.spans().keySet().stream()
                .filter(id -> id.startsWith(start))
                .toList();
        return same.isEmpty() ? scope.spans().keySet() : same;
    }

    private String nearest(String wrong, Collection<String> names) {
        if (names.isEmpty() || names.size() > MOST_NAMES || searches++ >= MOST_SEARCHES) {
            return "Name one as the results do.";
        }
        return "The nearest are " + String.join(", ", NearestWord.nearest(wrong, names, NEAREST)) + ".";
    }

    /** Returns the number of the entry that a row corrects; empty where it corrects none. */
    OptionalInt supersedes(FactReader.Row row, FieldFact fact, Optional<String> subject) {
        String text = row.cell("supersedes");
        if (text.isEmpty()) {
            return OptionalInt.empty();
        }
        FieldEntry earlier = text.matches("[1-9]\\d{0,8}") ? byNumber.get(Integer.parseInt(text)) : null;
        if (earlier == null) {
            row.reject("supersedes", "the field book has no entry " + text, "Name the entry that the row corrects.");
            return OptionalInt.empty();
        }
        Integer corrected = correctedBy.get(earlier.number());
        Long before = correctedInLine.putIfAbsent(earlier.number(), row.line());
        if (before != null) {
            row.reject("supersedes", "line " + before + " corrects entry " + text + " too", "Remove one of them.");
        }
        if (corrected != null) {
            row.reject("supersedes", "entry " + text + " is corrected by entry " + corrected, "Name that one.");
        } else if (earlier.fact() != fact) {
            row.reject(
                    "supersedes",
                    "entry " + text + " is about " + earlier.fact().key() + ", not " + fact.key(),
                    "A row corrects an entry of the same fact.");
        } else if (subject.isPresent() && !subject.get().equals(earlier.subject()) && isKnown(earlier)) {
            row.reject(
                    "supersedes",
                    "entry " + text + " is about " + earlier.subject() + ", not " + subject.get(),
                    "A row corrects an entry of the same span or vault, unless that one is no longer in the data.");
        }
        return OptionalInt.of(earlier.number());
    }

    /** What is no longer in the data was renamed, and its entries move to the new name. */
    private boolean isKnown(FieldEntry entry) {
        return entry.fact().subject() == FactSubject.SPAN
                ? scope.spans().containsKey(entry.subject())
                : scope.vaults().contains(entry.subject());
    }
}
