package org.spanroom.pull;

import java.util.Arrays;

/**
 * The straights and bends of one span's way, from the anchor to the pulling end.
 *
 * <p>Arrays side by side, not objects: a city has tens of millions of sections and each is visited dozens of times.
 */
final class PullSegments {
    private static final int INITIAL_CAPACITY = 8;

    int count;
    /** 1 for a crest, -1 for a sag, 0 for all else. */
    int[] vertical = new int[INITIAL_CAPACITY];

    double[] lengthM = new double[INITIAL_CAPACITY];
    /** Turn of a bend; 0 for a straight. */
    double[] turnRad = new double[INITIAL_CAPACITY];
    /** Radius of a bend where it presses hardest; 0 for a straight. */
    double[] radiusM = new double[INITIAL_CAPACITY];
    /** Sine of the slope towards the pulling end, of a straight or a plan bend. */
    double[] sineRatio = new double[INITIAL_CAPACITY];

    double[] fromSlopeRad = new double[INITIAL_CAPACITY];
    double[] toSlopeRad = new double[INITIAL_CAPACITY];

    void addStraight(double length, double sine) {
        int i = next();
        lengthM[i] = length;
        sineRatio[i] = sine;
    }

    void addBend(double length, double turn, double radius, double sine) {
        int i = next();
        lengthM[i] = length;
        turnRad[i] = turn;
        radiusM[i] = radius;
        sineRatio[i] = sine;
    }

    void addVertical(double fromSlope, double toSlope, double radius) {
        int i = next();
        turnRad[i] = Math.abs(toSlope - fromSlope);
        vertical[i] = toSlope < fromSlope ? 1 : -1;
        lengthM[i] = radius * turnRad[i];
        radiusM[i] = radius;
        fromSlopeRad[i] = fromSlope;
        toSlopeRad[i] = toSlope;
    }

    /** Takes away the sections from a number on. */
    void removeFrom(int first) {
        for (int i = first; i < count; i++) {
            lengthM[i] = 0;
            turnRad[i] = 0;
            radiusM[i] = 0;
            sineRatio[i] = 0;
            vertical[i] = 0;
        }
        count = first;
    }

    boolean isStraight(int i) {
        return turnRad[i] == 0;
    }

    boolean isPlanBend(int i) {
        return turnRad[i] > 0 && vertical[i] == 0;
    }

    double totalM() {
        double total = 0;
        for (int i = 0; i < count; i++) {
            total += lengthM[i];
        }
        return total;
    }

    /** Returns how far a section rises towards the pulling end. */
    double riseM(int i) {
        if (vertical[i] == 0) {
            return lengthM[i] * sineRatio[i];
        }
        // Integral of the sine of the slope along an arc.
        return vertical[i] * radiusM[i] * (Math.cos(toSlopeRad[i]) - Math.cos(fromSlopeRad[i]));
    }

    /** Returns the same way, walked from its other end. */
    PullSegments reversed() {
        var back = new PullSegments();
        for (int i = count - 1; i >= 0; i--) {
            if (vertical[i] == 0) {
                back.addBend(lengthM[i], turnRad[i], radiusM[i], -sineRatio[i]);
            } else {
                back.addVertical(-toSlopeRad[i], -fromSlopeRad[i], radiusM[i]);
            }
        }
        return back;
    }

    /** Returns what is left of the way when a length next to the anchor is gone. */
    PullSegments without(double goneM) {
        var rest = new PullSegments();
        double startM = 0;
        for (int i = 0; i < count; i++) {
            double left = Math.min(1, (startM + lengthM[i] - goneM) / lengthM[i]);
            startM += lengthM[i];
            if (!(left > 0)) {
                continue;
            }
            if (vertical[i] == 0) {
                rest.addBend(left * lengthM[i], left * turnRad[i], radiusM[i], sineRatio[i]);
            } else {
                double fromSlope = toSlopeRad[i] - left * (toSlopeRad[i] - fromSlopeRad[i]);
                rest.addVertical(fromSlope, toSlopeRad[i], radiusM[i]);
            }
        }
        return rest;
    }

    private int next() {
        if (count == lengthM.length) {
            vertical = Arrays.copyOf(vertical, 2 * count);
            lengthM = Arrays.copyOf(lengthM, 2 * count);
            turnRad = Arrays.copyOf(turnRad, 2 * count);
            radiusM = Arrays.copyOf(radiusM, 2 * count);
            sineRatio = Arrays.copyOf(sineRatio, 2 * count);
            fromSlopeRad = Arrays.copyOf(fromSlopeRad, 2 * count);
            toSlopeRad = Arrays.copyOf(toSlopeRad, 2 * count);
        }
        return count++;
    }
}
