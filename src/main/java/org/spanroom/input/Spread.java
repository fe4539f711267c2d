package org.spanroom.input;

import java.util.Arrays;
import java.util.Optional;

/**
 * The part of the world that nine tenths of a layer's places are in, in degrees; the outermost twentieth on each side is left out, so
 * that a few stray features do not widen it. A layer across the date line has a spread round the globe, and is far from nothing.
 */
record Spread(double westDeg, double southDeg, double eastDeg, double northDeg) {
    private static final int OUTERMOST = 20;

    /** Returns the spread of places, packed longitude and latitude; empty where fewer than half of them are places at all. */
    static Optional<Spread> of(double[] lonLatDeg) {
        double[] lonsDeg = sorted(lonLatDeg, 0);
        double[] latsDeg = sorted(lonLatDeg, 1);
        if (lonsDeg.length == 0 || 4 * lonsDeg.length < lonLatDeg.length) {
            return Optional.empty();
        }
        int out = lonsDeg.length / OUTERMOST;
        int last = lonsDeg.length - 1 - out;
        return Optional.of(new Spread(lonsDeg[out], latsDeg[out], lonsDeg[last], latsDeg[last]));
    }

    private static double[] sorted(double[] lonLatDeg, int offset) {
        double[] ordinates = new double[lonLatDeg.length / 2];
        int kept = 0;
        for (int at = 0; at < lonLatDeg.length; at += 2) {
            if (Double.isFinite(lonLatDeg[at])) {
                ordinates[kept++] = lonLatDeg[at + offset];
            }
        }
        double[] finite = Arrays.copyOf(ordinates, kept);
        Arrays.sort(finite);
        return finite;
    }

    /** Returns how many degrees of longitude or latitude, whichever is more, are between the two; 0 where they meet. */
    double gapDeg(Spread other) {
        double acrossDeg = Math.max(other.westDeg - eastDeg, westDeg - other.eastDeg);
        double upDeg = Math.max(other.southDeg - northDeg, southDeg - other.northDeg);
        return Math.max(0, Math.max(acrossDeg, upDeg));
    }
}
