package org.spanroom.input.fieldbook;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.spanroom.model.effort.EffortStep;
import org.spanroom.model.fieldwork.FactItem;
import org.spanroom.model.fieldwork.FieldFact;

/** Reads what a fact is about: an innerduct, a cable, a sleeve, a step of the work, or an end of the span. */
final class FactItems {
    private static final List<String> STEPS =
            Arrays.stream(EffortStep.values()).map(EffortStep::key).toList();

    private FactItems() {}

    /** Returns the item in the form that is kept. */
    static String item(FactReader.Row row, FieldFact fact) {
        String item = row.cell("item");
        switch (fact.item()) {
            case NONE -> {
                if (!item.isEmpty()) {
                    row.reject("item", fact.key() + " has no item, and '" + item + "' is given", "Leave it empty.");
                }
            }
            case INNERDUCT, CABLE, SLEEVE -> demandName(row, item, fact);
            case STEP -> {
                return step(row, item);
            }
            case END -> {
                return end(row, item.toLowerCase(Locale.ROOT), item);
            }
            case INNERDUCT_AT_END, CABLE_AT_END -> {
                return atEnd(row, item, fact);
            }
            default -> {
                // An occasion is in the crew's words, or not named.
            }
        }
        return item;
    }

    private static void demandName(FactReader.Row row, String item, FieldFact fact) {
        if (item.isEmpty()) {
            row.reject("item", "the " + thing(fact.item()) + " is not named", "Name it as the sheet does.");
        }
    }

    private static String thing(FactItem item) {
        return item.name().toLowerCase(Locale.ROOT).replace("_at_end", "");
    }

    private static String step(FactReader.Row row, String item) {
        String word = FactWords.word(item);
        if (!STEPS.contains(word)) {
            row.reject(
                    "item",
                    item.isEmpty() ? "no step is named" : "'" + item + "' is not a step of the work",
                    item.isEmpty() ? "The steps are " + String.join(", ", STEPS) + "." : FactWords.meant(word, STEPS));
        }
        return word;
    }

    private static String end(FactReader.Row row, String end, String item) {
        if (!end.equals("a") && !end.equals("b")) {
            row.reject(
                    "item",
                    "'" + item + "' is not an end of the span",
                    "Write a for the vault where it begins, b for the one where it ends.");
        }
        return end;
    }

    private static String atEnd(FactReader.Row row, String item, FieldFact fact) {
        int blank = item.lastIndexOf(' ');
        if (blank <= 0) {
            row.reject(
                    "item",
                    "'" + item + "' is not the name of "
                            + (fact.item() == FactItem.CABLE_AT_END ? "a cable" : "an innerduct")
                            + ", a blank, and an end",
                    "Write, for example, " + thing(fact.item()) + "-2 a.");
            return item;
        }
        String end = item.substring(blank + 1).toLowerCase(Locale.ROOT);
        return item.substring(0, blank).strip() + " " + end(row, end, item);
    }
}
