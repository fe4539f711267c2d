package org.spanroom.bend;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.spanroom.model.Line;

/** Draws test lines with a turtle: straights by their vertices' spacing, arcs by chords, with noise on request. */
final class Drawing {
    private final List<double[]> vertices = new ArrayList<>();
    private double headingRad;

    private Drawing(double headingRad) {
        this.headingRad = headingRad;
        vertices.add(new double[] {0, 0});
    }

    static Drawing heading(double headingDeg) {
        return new Drawing(Math.toRadians(headingDeg));
    }

    Drawing straight(double lengthM, int steps) {
        for (int step = 0; step < steps; step++) {
            go(lengthM / steps);
        }
        return this;
    }

    Drawing turn(double turnDeg) {
        headingRad += Math.toRadians(turnDeg);
        return this;
    }

    /** Draws an arc, positive to the left, as a number of equal chords with all vertices on the arc. */
    Drawing arc(double turnDeg, double radiusM, int chords) {
        double stepRad = Math.toRadians(turnDeg) / chords;
        for (int chord = 0; chord < chords; chord++) {
            headingRad += stepRad / 2;
            go(2 * radiusM * Math.sin(Math.abs(stepRad) / 2));
            headingRad += stepRad / 2;
        }
        return this;
    }

    private void go(double lengthM) {
        double[] last = vertices.get(vertices.size() - 1);
        vertices.add(new double[] {last[0] + lengthM * Math.cos(headingRad), last[1] + lengthM * Math.sin(headingRad)});
    }

    Line line() {
        return line(0, 0);
    }

    Line line(double noiseM, long seed) {
        var random = new Random(seed);
        double[] xy = new double[2 * vertices.size()];
        for (int i = 0; i < vertices.size(); i++) {
            xy[2 * i] = vertices.get(i)[0] + noiseM * random.nextGaussian();
            xy[2 * i + 1] = vertices.get(i)[1] + noiseM * random.nextGaussian();
        }
        return Line.ofXy(xy);
    }
}
