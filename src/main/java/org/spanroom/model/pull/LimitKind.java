package org.spanroom.model.pull;

import java.util.Locale;

/** Every limit that a pull is held to. The lower-case name is part of the output. */
public enum LimitKind {
    INNERDUCT_STRENGTH("pull on the innerduct", "N"),
    MACHINE_PULL("pull of the machine", "N"),
    CABLE_HOLD("hold force on the live cable", "N"),
    INNERDUCT_SIDEWALL("pressure of the innerduct in a bend", "N/m"),
    CABLE_SIDEWALL("pressure of the live cable in a bend", "N/m"),
    CABLE_BEND_RADIUS("radius to which the live cable is bent under load", "m"),
    INNERDUCT_BEND_RADIUS("radius to which the innerduct is bent in the duct", "m"),
    VAULT_EXIT_RADIUS("radius to which the innerduct is bent on its way out of the vault", "m"),
    CABLE_EXIT_RADIUS("radius to which the live cable is bent on its way out of the vault", "m"),
    CABLE_SLACK("cable slack recorded at the vault", "m"),
    TOTAL_BENDS("total of all bends", "rad"),
    SECTION_LENGTH("length between the vaults", "m");

    private static final double MOST_OF_A_MINIMUM = 10;

    private final String meaning;
    private final String unit;

    LimitKind(String meaning, String unit) {
        this.meaning = meaning;
        this.unit = unit;
    }

    public String meaning() {
        return meaning;
    }

    /** Returns the SI unit of what is found and what is allowed. */
    public String unit() {
        return unit;
    }

    /** Returns true where the allowed value is the smallest one, not the largest. */
    public boolean isMinimum() {
        return switch (this) {
            case CABLE_BEND_RADIUS, INNERDUCT_BEND_RADIUS, VAULT_EXIT_RADIUS, CABLE_EXIT_RADIUS, CABLE_SLACK -> true;
            default -> false;
        };
    }

    /**
     * Returns whether a pull that passes this limit at both ends, whatever the friction, keeps a span out of the ranking. Two radii
     * do not: the innerduct lies in the bends of its duct already, and the radius out of a vault is that of a guide that can be changed.
     */
    public boolean excludes() {
        return this != INNERDUCT_BEND_RADIUS && this != VAULT_EXIT_RADIUS;
    }

    /**
     * Returns how far a limit is used: found over allowed, or allowed over found for a minimum. A minimum of which there is a tenth or
     * less counts as used ten times, so that what is missing altogether still is a number.
     */
    public double ratio(double found, double allowed) {
        return isMinimum() ? allowed / Math.max(found, allowed / MOST_OF_A_MINIMUM) : found / allowed;
    }

    /** Returns the word for this limit in columns. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
