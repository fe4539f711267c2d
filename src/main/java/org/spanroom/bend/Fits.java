package org.spanroom.bend;

import java.util.HashMap;
import java.util.Map;

/**
 * Fits of parts of one line under one noise, each done once: the same straights and arcs through the same vertices come up when corners
 * are joined, when they are dropped, in the path as a whole, and when a radius is read.
 *
 * <p>Not safe for use by several threads. What is returned must not be changed.
 */
final class Fits {
    /** A long line forgets all when it has so many: what comes up again comes up soon, and each takes half a kilobyte. */
    static final int MOST_KNOWN = 2000;

    final Trace trace;
    final Noise noise;
    private final int mostKnown;
    private final Map<Part, Fitted> known = new HashMap<>();

    /** Some groups of corners, and the vertices through which straights and arcs are laid. */
    record Part(Corners corners, int from, int to) {}

    /**
     * A fitted path.
     *
     * @param cost sum of squares in variances, infinite where no fit is possible
     * @param earlyCost what it was when a hopeless fit would have been given up; negative where it had ended by then
     */
    record Fitted(TangentChain chain, double cost, double earlyCost) {}

    Fits(Trace trace, Noise noise, int mostKnown) {
        this.trace = trace;
        this.noise = noise;
        this.mostKnown = mostKnown;
    }

    TangentChain unfitted(Part part) {
        return new TangentChain(trace, noise, part.corners(), part.from(), part.to());
    }

    Fitted fit(Part part) {
        Fitted before = known.get(part);
        return before != null ? before : fit(part, unfitted(part));
    }

    /** Returns the fit of a path that is laid but not yet fitted, perhaps in that path. */
    Fitted fit(TangentChain unfitted) {
        var part = new Part(unfitted.corners, unfitted.from, unfitted.to);
        Fitted before = known.get(part);
        return before != null ? before : fit(part, unfitted);
    }

    private Fitted fit(Part part, TangentChain unfitted) {
        Fitted fitted = ChainFit.fit(unfitted, noise.sigmaM);
        keep(part, fitted);
        return fitted;
    }

    /** Returns the fit, or one of a cost above the limit where it would stay far above. */
    Fitted fitUnlessAbove(Part part, double limit) {
        Fitted before = known.get(part);
        if (before != null) {
            return before.earlyCost() > ChainFit.hopelessAbove(limit)
                    ? new Fitted(before.chain(), before.earlyCost(), before.earlyCost())
                    : before;
        }
        Fitted fitted = ChainFit.fitUnlessAbove(unfitted(part), noise.sigmaM, limit);
        if (fitted.cost() <= limit) {
            keep(part, fitted);
        }
        return fitted;
    }

    private void keep(Part part, Fitted fitted) {
        if (known.size() >= mostKnown) {
            known.clear();
        }
        if (mostKnown > 0) {
            known.put(part, fitted);
        }
    }
}
