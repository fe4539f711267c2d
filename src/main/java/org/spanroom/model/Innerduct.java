package org.spanroom.model;

import java.util.List;

/**
 * A rigid pipe inside a duct, with the cables that lie in it: mostly one, or none.
 *
 * @param wallMm minimum wall thickness
 */
public record Innerduct(String id, double outsideDiameterMm, double wallMm, List<Cable> cables) {
    public Innerduct {
        Check.positive("outsideDiameterMm", outsideDiameterMm);
        Check.positive("wallMm", wallMm);
        if (2 * wallMm >= outsideDiameterMm) {
            throw new IllegalArgumentException(
                    "wallMm must be less than half of outsideDiameterMm " + outsideDiameterMm + ", was " + wallMm);
        }
        cables = List.copyOf(cables);
    }

    public double insideDiameterMm() {
        return outsideDiameterMm - 2 * wallMm;
    }

    /** Returns the area that the pipe closes off, its outside diameter taken as solid. */
    public double areaMm2() {
        return Math.PI / 4 * outsideDiameterMm * outsideDiameterMm;
    }

    public boolean isEmpty() {
        return cables.isEmpty();
    }
}
