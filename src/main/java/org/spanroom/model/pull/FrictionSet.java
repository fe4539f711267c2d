package org.spanroom.model.pull;

import org.spanroom.model.Check;

/**
 * Coulomb coefficients of friction of the three pairs that rub.
 *
 * @param ductRatio innerduct on the duct's wall
 * @param jacketRatio cable jacket on the innerduct's bore
 * @param neighborRatio innerduct on a neighbor that rests on it
 */
public record FrictionSet(double ductRatio, double jacketRatio, double neighborRatio) {
    public FrictionSet {
        Check.notNegative("ductRatio", ductRatio);
        Check.notNegative("jacketRatio", jacketRatio);
        Check.notNegative("neighborRatio", neighborRatio);
    }
}
