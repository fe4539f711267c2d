package org.spanroom.output.sheet;

import java.util.List;
import java.util.Optional;
import org.spanroom.model.fieldwork.CloseoutRow;
import org.spanroom.model.fieldwork.FactKind;
import org.spanroom.model.fieldwork.FactSubject;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.SheetCode;
import org.spanroom.output.explain.ExplanationReading;
import org.spanroom.output.table.Text;

/**
 * A place to write on a page, which is a row of the close-out file too.
 *
 * @param subjectId the span or vault that the fact is about
 * @param item what of it; empty for a fact about the whole
 * @param planned what the page says, in the unit; empty where it says nothing
 * @param unit in which the crew writes
 */
public record SheetBlank(FieldFact fact, String subjectId, String item, String planned, FactUnit unit) {
    public SheetBlank {
        subjectId = Text.clean(subjectId);
        item = Text.clean(item);
        planned = Text.clean(planned);
        if (!fact.kind().units().contains(unit)) {
            throw new IllegalArgumentException(fact + " is not reported in " + unit);
        }
    }

    /** Returns the row of the close-out file, to be filled in. */
    public CloseoutRow row(SheetCode code) {
        boolean ofSpan = fact.subject() == FactSubject.SPAN;
        return new CloseoutRow(
                code.text(),
                ofSpan ? subjectId : "",
                ofSpan ? "" : subjectId,
                fact.key(),
                item,
                planned,
                "",
                unit.symbol(),
                "",
                "",
                "",
                "");
    }

    /** Returns the word of the fact. */
    public String key() {
        return fact.key();
    }

    /** Returns the name of the subject's attribute in the page. */
    public String subject() {
        return fact.subject().key();
    }

    public String subjectWords() {
        return ExplanationReading.printable(subjectId);
    }

    public String itemWords() {
        return ExplanationReading.printable(item);
    }

    /** Returns the words to tick; none where something is written. */
    public List<String> choices() {
        if (fact.kind() == FactKind.ANSWER) {
            return List.of("yes", "no");
        }
        return fact.words().stream().map(word -> word.replace('_', ' ')).toList();
    }

    /** Returns how wide the place is drawn, as a class of the page's styles. */
    public String room() {
        return switch (fact.kind()) {
            case TEXT, DAY -> "long";
            default -> "short";
        };
    }

    /** Returns what stands before a place to write; empty for one to tick. */
    public Optional<String> line() {
        return choices().isEmpty() ? Optional.of("") : Optional.empty();
    }

    public String unitWords() {
        return unit == FactUnit.MONEY ? "" : unit.symbol();
    }
}
