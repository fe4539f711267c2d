package org.spanroom.model.bore;

import org.spanroom.model.Check;

/**
 * Where design cables find a place in a duct.
 *
 * @param inInnerducts empty innerducts that can take the design cable
 * @param inSleeves cells of the sleeves already in that hold no cable and are not reserved
 * @param beside cells of new sleeves that fit beside whatever is in the duct
 * @param reserved positions of the duct that are promised to its owner or to customers
 */
public record Positions(int inInnerducts, int inSleeves, int beside, int reserved) {
    public Positions {
        Check.notNegative("inInnerducts", inInnerducts);
        Check.notNegative("inSleeves", inSleeves);
        Check.notNegative("beside", beside);
        Check.notNegative("reserved", reserved);
    }

    /** Returns how many are left to plan with: all of them less the reserved ones. */
    public int free() {
        return Math.max(0, inInnerducts + inSleeves + beside - reserved);
    }

    /** Returns the same positions where this many are reserved. */
    Positions withReserved(int otherReserved) {
        return new Positions(inInnerducts, inSleeves, beside, otherReserved);
    }

    /** Returns the same positions where only rigid innerducts let a cable through. */
    Positions inInnerductsOnly() {
        return new Positions(inInnerducts, 0, 0, reserved);
    }
}
