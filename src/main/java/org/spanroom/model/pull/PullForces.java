package org.spanroom.model.pull;

import org.spanroom.model.Check;

/**
 * The two forces of one pull as it starts, steady: without the breakaway factor.
 *
 * @param pullN force on the innerduct at the pulling end
 * @param holdN force that holds its cables at the anchor end, all together
 */
public record PullForces(double pullN, double holdN) {
    public static final PullForces NONE = new PullForces(0, 0);

    public PullForces {
        Check.notNegative("pullN", pullN);
        Check.notNegative("holdN", holdN);
    }
}
