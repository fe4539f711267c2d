package org.spanroom.model;

/** An angle. A type of its own because files speak degrees and formulas speak radians. */
public record Angle(double rad) implements Comparable<Angle> {
    public static final Angle ZERO = new Angle(0);

    public Angle {
        Check.finite("rad", rad);
    }

    public static Angle ofDeg(double deg) {
        return new Angle(Math.toRadians(deg));
    }

    public static Angle ofRad(double rad) {
        return new Angle(rad);
    }

    public double deg() {
        return Math.toDegrees(rad);
    }

    public Angle plus(Angle other) {
        return new Angle(rad + other.rad);
    }

    @Override
    public int compareTo(Angle other) {
        return Double.compare(rad, other.rad);
    }
}
