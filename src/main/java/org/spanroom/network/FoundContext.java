package org.spanroom.network;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.spanroom.model.Counted;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.UsualItems;

/**
 * What the entries of one span are applied to, and what comes of it beside the contents.
 *
 * @param duct as recorded
 * @param usual what is taken where no size is recorded
 * @param problems of the entries, which grow
 * @param found terms that are now known from the field, which grow
 * @param assumed terms for which a default is now used, which grow
 */
record FoundContext(
        Duct duct,
        FactsInForce facts,
        UsualItems usual,
        List<FieldProblem> problems,
        Set<Term> found,
        Set<Term> assumed) {
    FoundContext(Duct duct, FactsInForce facts, UsualItems usual, List<FieldProblem> problems) {
        this(duct, facts, usual, problems, EnumSet.noneOf(Term.class), EnumSet.noneOf(Term.class));
    }

    void contradiction(FieldEntry entry, String detail) {
        problems.add(FieldProblem.contradiction(entry, detail));
    }

    void incomplete(FieldEntry entry, String detail) {
        problems.add(FieldProblem.incomplete(entry, detail));
    }

    /** Reports an entry about an item that the duct does not have. */
    void unknown(FieldEntry entry, String thing, FieldFact there) {
        contradiction(
                entry,
                "the duct has no " + thing + " '" + entry.item() + "'; if there is one, report " + there.key()
                        + " for it");
    }

    /** Returns whether a count is less than what other entries name, and reports that. */
    boolean contradicts(FieldEntry count, Set<String> named, String thing) {
        if (named.size() <= count(count)) {
            return false;
        }
        contradiction(
                count,
                "other entries name " + Counted.of(named.size(), thing) + " (" + String.join(", ", named)
                        + "); the count is not used. Correct it, or the entry that names too many");
        return true;
    }

    static int count(FieldEntry entry) {
        return (int) entry.value().keptInUnit().orElse(0);
    }

    /** Returns names for items that are additional: first those that other entries name, then numbered ones. */
    static List<String> newNames(int count, Set<String> named, Collection<String> taken, String stem) {
        var names = new ArrayList<String>();
        for (String name : named) {
            if (names.size() < count && !taken.contains(name)) {
                names.add(name);
            }
        }
        for (int number = 1; names.size() < count; number++) {
            String name = stem + number;
            if (!taken.contains(name) && !names.contains(name)) {
                names.add(name);
            }
        }
        return names;
    }
}
