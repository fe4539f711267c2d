package org.spanroom.input.proposal;

import java.util.Comparator;
import org.spanroom.model.Term;

/**
 * A field that may be a term.
 *
 * @param place the field's place in the layer
 * @param score how well the name fits, from 0 to 1
 */
record Candidate(int place, Term term, double score, UnitGuess unit, Doubt doubt) {
    private static final double PRICE_OF_DOUBT = 0.3;

    /** Sure and well named ones first, then in the order of the layer's fields. */
    static final Comparator<Candidate> BEST_FIRST = Comparator.comparingDouble(Candidate::worth)
            .reversed()
            .thenComparing(Candidate::place)
            .thenComparing(Candidate::term);

    private double worth() {
        return score - (isSure() ? 0 : PRICE_OF_DOUBT);
    }

    boolean isSure() {
        return doubt.isNone() && unit.doubt().isNone();
    }

    String reason() {
        return doubt.or(unit.doubt()).reason();
    }
}
