package org.spanroom.sample;

/**
 * One district before anything is drawn in it.
 *
 * @param number from 1
 * @param targetSpans how many spans it is to have room for
 */
record District(int number, DistrictKind kind, double centerX, double centerY, int targetSpans, long seed) {
    Chance chance(long purpose) {
        return Chance.of(seed, number, purpose);
    }

    double groundM(double x, double y) {
        return kind.groundM(x - centerX, y - centerY);
    }
}
