package org.spanroom.output.sheet;

import java.util.List;
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
    private static final double SIZE_PT = 9;
    private static final double SHORT_MM = 13;
    private static final double LONG_MM = 24;
    private static final double TICK_MM = 3.6;

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

    /**
     * A word to tick.
     *
     * @param planned whether it is what the records or the plan say
     */
    public record Choice(String word, boolean planned) {}

    /** Returns the words to tick; none where something is written. */
    public List<Choice> choices() {
        List<String> words = fact.kind() == FactKind.ANSWER ? List.of("yes", "no") : fact.words();
        return words.stream()
                .map(word -> new Choice(word.replace('_', ' '), word.equals(planned)))
                .toList();
    }

    /** Returns how wide the place is drawn, as a class of the page's styles. */
    public String room() {
        if (fact == FieldFact.INNERDUCT_COLOR) {
            return "short";
        }
        return switch (fact.kind()) {
            case TEXT, DAY -> "long";
            default -> "short";
        };
    }

    /** Returns whether something is written, not ticked. */
    public boolean written() {
        return choices().isEmpty();
    }

    /** Returns how wide it is drawn in a line, at most. */
    double widthMm() {
        double ticksMm = choices().stream()
                .mapToDouble(choice -> TICK_MM + SheetFont.BOLD.widthMm(choice.word() + " ", SIZE_PT))
                .sum();
        double lineMm = !written() ? 0 : room().equals("long") ? LONG_MM : SHORT_MM;
        return ticksMm + lineMm + SheetFont.REGULAR.widthMm(unitWords(), SIZE_PT) + 1;
    }

    public String unitWords() {
        return unit == FactUnit.MONEY ? "" : unit.symbol();
    }
}
