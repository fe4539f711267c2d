package org.spanroom.input;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.spanroom.model.BoreShape;
import org.spanroom.model.CatalogUse;
import org.spanroom.model.Term;

/** What rows of the catalogue give for the terms of one feature, or of one row of a table, and what was taken of it. */
final class CatalogOffers {
    /** Trade sizes of one type differ by far more, sheets of one size by less; our judgement. */
    private static final double DIAMETER_TOLERANCE_RATIO = 0.03;

    /** The tolerance of a wall is 12 % (ASTM D3035 by a maker's reprint), and a mass goes with it. */
    private static final double OTHER_TOLERANCE_RATIO = 0.15;

    private final Map<Term, Offer> byTerm = new EnumMap<>(Term.class);
    private final Set<Term> taken = EnumSet.noneOf(Term.class);
    private final Set<String> rows = new TreeSet<>();
    private BoreShape shape = BoreShape.ROUND;

    /**
     * What a row gives for one term.
     *
     * @param kept in the unit that is kept; NaN for a shape
     * @param assumed whether a configured default names the row, not the data
     */
    record Offer(String row, double kept, boolean assumed) {}

    void clear() {
        byTerm.clear();
        taken.clear();
        rows.clear();
    }

    void offer(Term term, Offer offer) {
        byTerm.put(term, offer);
    }

    void offerShape(BoreShape offered, Offer offer) {
        shape = offered;
        byTerm.put(Term.BORE_SHAPE, offer);
    }

    Optional<Offer> find(Term term) {
        return Optional.ofNullable(byTerm.get(term));
    }

    /** Returns what the data's own row gives, not one that a default names. */
    Optional<Offer> findNamed(Term term) {
        return find(term).filter(offer -> !offer.assumed());
    }

    Optional<BoreShape> findShape() {
        return find(Term.BORE_SHAPE).map(offer -> shape);
    }

    /** Takes the offered value. */
    double take(Term term, Offer offer) {
        rows.add(offer.row());
        if (!offer.assumed()) {
            taken.add(term);
        }
        return offer.kept();
    }

    /** Returns how a recorded value disagrees with the row that the data names; empty where it does not. */
    Optional<String> disagreement(Term term, double kept) {
        double toleranceRatio = term.kind() == Term.Kind.DIAMETER && term != Term.INNERDUCT_WALL
                ? DIAMETER_TOLERANCE_RATIO
                : OTHER_TOLERANCE_RATIO;
        return findNamed(term)
                .filter(offer -> Math.abs(kept - offer.kept()) > toleranceRatio * offer.kept())
                .map(offer -> term.key() + " is recorded as " + Quantities.shown(term, kept) + ", the catalogue's '"
                        + offer.row() + "' has " + Quantities.shown(term, offer.kept()));
    }

    /** Returns what was taken since the last clearing. */
    CatalogUse use() {
        return rows.isEmpty()
                ? CatalogUse.NONE
                : new CatalogUse(taken, Set.copyOf(rows).stream().toList());
    }
}
