package org.spanroom.model;

/** Guards for record constructors; the message names the component, the rule and the value that broke it. */
public final class Check {
    private Check() {}

    public static void positive(String name, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(name + " must be > 0, was " + value);
        }
    }

    public static void notNegative(String name, double value) {
        if (!(value >= 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(name + " must be >= 0, was " + value);
        }
    }

    public static void finite(String name, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " must be finite, was " + value);
        }
    }

    public static void within(String name, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(name + " must be from " + least + " to " + most + ", was " + value);
        }
    }

    public static void notBlank(String name, String value) {
        if (value.isBlank()) {
            throw new IllegalArgumentException(name + " must not be blank");
        }
    }
}
