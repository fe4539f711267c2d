package org.spanroom.model.network;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.spanroom.model.Term;

/**
 * Which sizes of a duct and of what is in it were taken from the catalog, and from which rows.
 *
 * @param terms the terms whose values come from a row that the data names
 * @param rows names of the rows that values were taken from, those that configured defaults name among them; sorted
 */
public record CatalogUse(Set<Term> terms, List<String> rows) {
    public static final CatalogUse NONE = new CatalogUse(Set.of(), List.of());

    public CatalogUse {
        terms = Set.copyOf(terms);
        rows = List.copyOf(new TreeSet<>(rows));
    }

    /** Returns the use of both. */
    public CatalogUse and(CatalogUse other) {
        if (other.equals(NONE)) {
            return this;
        }
        Set<Term> allTerms = EnumSet.noneOf(Term.class);
        allTerms.addAll(terms);
        allTerms.addAll(other.terms);
        var allRows = new ArrayList<>(rows);
        allRows.addAll(other.rows);
        return new CatalogUse(allTerms, allRows);
    }
}
