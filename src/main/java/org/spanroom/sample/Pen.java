package org.spanroom.sample;

import java.util.Arrays;

/** Draws a path in the plane as a drafter would: straights, arcs as chords, corners as one vertex. */
final class Pen {
    private double[] xy = new double[32];
    private int size;
    private double x;
    private double y;
    private double headingRad;

    Pen(double x, double y, double headingRad) {
        this.x = x;
        this.y = y;
        this.headingRad = headingRad;
        dot();
    }

    /** Returns the ordinates x0, y0, x1, y1, ... drawn so far. */
    double[] path() {
        return Arrays.copyOf(xy, size);
    }

    double x() {
        return x;
    }

    double y() {
        return y;
    }

    Pen straight(double lengthM) {
        if (lengthM > 0) {
            x += lengthM * StrictMath.cos(headingRad);
            y += lengthM * StrictMath.sin(headingRad);
            dot();
        }
        return this;
    }

    /** Turns on the spot, to the left if the turn is positive. */
    Pen corner(double turnRad) {
        headingRad += turnRad;
        return this;
    }

    /** Draws an arc whose vertices are on it, at most a chord apart. */
    Pen arc(double radiusM, double turnRad, double chordM) {
        int chords = Math.max(2, (int) Math.ceil(radiusM * Math.abs(turnRad) / chordM));
        double stepRad = turnRad / chords;
        double stepM = 2 * radiusM * StrictMath.sin(Math.abs(stepRad) / 2);
        for (int i = 0; i < chords; i++) {
            headingRad += stepRad / 2;
            straight(stepM);
            headingRad += stepRad / 2;
        }
        return this;
    }

    private void dot() {
        if (size == xy.length) {
            xy = Arrays.copyOf(xy, 2 * size);
        }
        xy[size++] = x;
        xy[size++] = y;
    }
}
