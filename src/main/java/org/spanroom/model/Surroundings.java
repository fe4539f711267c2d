package org.spanroom.model;

/**
 * Where lines lie, as a rectangle of longitude and latitude, to see if others are anywhere near: those of a wrong reference system are not.
 */
public final class Surroundings {
    /** What counts as near, for people. */
    public static final String NEAR = "within about 5 km";

    /** About 5 km: a layer of one town has something as near as that, whatever the shape of the town. */
    private static final double NEAR_DEG = 0.05;

    private static final double FULL_TURN_DEG = 360;

    private double westDeg = Double.POSITIVE_INFINITY;
    private double southDeg = Double.POSITIVE_INFINITY;
    private double eastDeg = Double.NEGATIVE_INFINITY;
    private double northDeg = Double.NEGATIVE_INFINITY;

    /** Adds a line in degrees on WGS 84. */
    public void add(Line lonLat) {
        for (int i = 0; i < lonLat.size(); i++) {
            westDeg = Math.min(westDeg, lonLat.x(i));
            eastDeg = Math.max(eastDeg, lonLat.x(i));
            southDeg = Math.min(southDeg, lonLat.y(i));
            northDeg = Math.max(northDeg, lonLat.y(i));
        }
    }

    /** Returns whether nothing was added. */
    public boolean isEmpty() {
        return westDeg > eastDeg;
    }

    /** Returns whether the rectangle around a line is near, also across the antimeridian. */
    public boolean isNear(Line lonLat) {
        var other = new Surroundings();
        other.add(lonLat);
        boolean up = other.southDeg <= northDeg + NEAR_DEG && other.northDeg >= southDeg - NEAR_DEG;
        return up && (isAcross(other, 0) || isAcross(other, FULL_TURN_DEG) || isAcross(other, -FULL_TURN_DEG));
    }

    private boolean isAcross(Surroundings other, double turnDeg) {
        return other.westDeg + turnDeg <= eastDeg + NEAR_DEG && other.eastDeg + turnDeg >= westDeg - NEAR_DEG;
    }
}
