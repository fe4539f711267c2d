package org.spanroom.input.fields;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.spanroom.model.Term;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.CatalogUse;

/** What rows of the catalog give for the terms of one feature, or of one row of a table, and what was taken of it. */
final class CatalogOffers {
    /** Trade sizes of one type differ by far more, sheets of one size by less; our judgment. */
    private static final double DIAMETER_TOLERANCE_RATIO = 0.03;

    /** The tolerance of a wall is 12 % (ASTM D3035 as reprinted in a data sheet), and a mass goes with it. */
    private static final double OTHER_TOLERANCE_RATIO = 0.15;

    private final Map<Term, Offer> byTerm = new EnumMap<>(Term.class);
    private final Set<Term> taken = EnumSet.noneOf(Term.class);
    private final Set<String> rows = new TreeSet<>();

    /**
     * What a row gives for one term.
     *
     * @param kept in the unit that is kept; NaN for a word
     * @param word one of ours; "" for a number
     * @param assumed whether a configured default names the row, not the data
     */
    record Offer(String row, double kept, String word, boolean assumed) {}

    void clear() {
        byTerm.clear();
        taken.clear();
        rows.clear();
    }

    void offer(Term term, String row, double kept, boolean isAssumed) {
        byTerm.put(term, new Offer(row, kept, "", isAssumed));
    }

    void offerShape(String row, BoreShape shape, boolean isAssumed) {
        byTerm.put(Term.BORE_SHAPE, new Offer(row, Double.NaN, word(shape), isAssumed));
    }

    private static String word(Object meaning) {
        return meaning.toString().toLowerCase(Locale.ROOT);
    }

    Optional<Offer> find(Term term) {
        return Optional.ofNullable(byTerm.get(term));
    }

    /** Returns what the data's own row gives, not one that a default names. */
    Optional<Offer> findNamed(Term term) {
        return find(term).filter(offer -> !offer.assumed());
    }

    /** Takes what is offered. */
    Offer take(Term term, Offer offer) {
        rows.add(offer.row());
        if (!offer.assumed()) {
            taken.add(term);
        }
        return offer;
    }

    /** Returns how a recorded shape of the bore, the one word that rows give, disagrees with the row that the data names. */
    Optional<String> otherWord(Term term, Object recorded) {
        return findNamed(term)
                .filter(offer -> !offer.word().equals(word(recorded)))
                .map(offer -> "the bore is recorded as " + word(recorded) + ", the catalog's '" + offer.row() + "' is "
                        + offer.word());
    }

    /** Returns how a recorded value disagrees with the row that the data names; empty where it does not. */
    Optional<String> disagreement(Term term, double kept) {
        double toleranceRatio = term.kind() == Term.Kind.DIAMETER && term != Term.INNERDUCT_WALL
                ? DIAMETER_TOLERANCE_RATIO
                : OTHER_TOLERANCE_RATIO;
        return findNamed(term)
                .filter(offer -> Math.abs(kept - offer.kept()) > toleranceRatio * offer.kept())
                .map(offer -> term.key() + " is recorded as " + TermNumbers.shown(term, kept) + ", the catalog's '"
                        + offer.row() + "' has " + TermNumbers.shown(term, offer.kept()));
    }

    /** Returns what was taken since the last clearing. */
    CatalogUse use() {
        return rows.isEmpty()
                ? CatalogUse.NONE
                : new CatalogUse(taken, Set.copyOf(rows).stream().toList());
    }
}
