package org.spanroom.network;

import java.util.List;
import org.spanroom.model.network.Route;

/**
 * A whole route as a link of a chain.
 *
 * @param number place of the route in reading order
 * @param passes in the route's own places, as drawn
 * @param reversed true where the chain runs against the drawing
 * @param startM place on the chain where the piece begins
 */
record ChainLink(int number, Route route, Track track, List<VaultCrossing> passes, boolean reversed, double startM) {
    double lengthM() {
        return track.lengthM();
    }

    double endM() {
        return startM + lengthM();
    }

    /** Returns the place on the chain of the route's first vertex (side 0) or last (side 1). */
    double placeOfSideM(int side) {
        return side == 0 == reversed ? endM() : startM;
    }

    /** Returns the place on the route's own line for a place on the chain. */
    double ownPlaceM(double chainM) {
        double fromStart = Math.max(0, Math.min(lengthM(), chainM - startM));
        return reversed ? lengthM() - fromStart : fromStart;
    }

    double lonAt(double chainM) {
        return track.lonAt(ownPlaceM(chainM));
    }

    double latAt(double chainM) {
        return track.latAt(ownPlaceM(chainM));
    }

    /** Adds the part between two places of the chain to a line, in the chain's direction or back. */
    void copy(double fromM, double toM, boolean back, SpanLine target) {
        double a = ownPlaceM(fromM);
        double b = ownPlaceM(toM);
        target.begin(track.hasZ());
        if (reversed == back) {
            track.copy(Math.min(a, b), Math.max(a, b), target);
        } else {
            track.copyBack(Math.min(a, b), Math.max(a, b), target);
        }
    }
}
