package org.spanroom.input.fieldbook;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.spanroom.model.fieldwork.FactSubject;
import org.spanroom.model.fieldwork.FactValue;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.RowProblem;

/** Notices what is reported twice: a file that is applied again, and rows of one file that say the same. */
final class CloseoutRepeats {
    private final Map<String, Integer> entered = new HashMap<>();
    private final Map<String, Long> lines = new HashMap<>();

    CloseoutRepeats(FieldBook book) {
        book.all().forEach(entry -> entered.putIfAbsent(key(entry), entry.number()));
    }

    /** Says what a row repeats; a row that repeats nothing is remembered. A correction says by itself that it is another report. */
    Optional<RowProblem> find(long line, FieldEntry entry) {
        String key = key(entry);
        Integer number = entered.get(key);
        boolean corrects = entry.supersedes().isPresent()
                && (number == null || entry.supersedes().getAsInt() != number);
        if (number != null && !corrects) {
            return Optional.of(new RowProblem(
                    line,
                    "",
                    "it is already entered as entry " + number,
                    "Remove the row, or enter the others with --partial."));
        }
        Long before = lines.putIfAbsent(key, line);
        return before == null
                ? Optional.empty()
                : Optional.of(new RowProblem(line, "", "it says the same as line " + before, "Remove one of them."));
    }

    /**
     * Returns whether an earlier row says the same of a vault: one that several sections share has a place to write on each of their cover
     * pages, and it is entered once.
     */
    boolean isOnAnotherSheet(FieldEntry entry) {
        return entry.fact().subject() == FactSubject.VAULT
                && entry.supersedes().isEmpty()
                && lines.containsKey(key(entry));
    }

    /** One fact is one fact, whichever run's sheet it was written on. */
    private static String key(FieldEntry entry) {
        return String.join(
                "\n",
                entry.fact().key(),
                entry.subject(),
                entry.item(),
                value(entry.value()),
                entry.day().toString());
    }

    /** One inch is 25.4 mm, whatever the unit that it is written in. */
    private static String value(FactValue value) {
        return value.keptInUnit().isPresent()
                ? Long.toString(Math.round(value.keptInUnit().getAsDouble() * 1e6))
                : value.text();
    }
}
