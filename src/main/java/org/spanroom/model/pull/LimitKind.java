package org.spanroom.model.pull;

import java.util.Locale;

/** Every limit that a pull is checked against. The lower-case name is part of the output. */
public enum LimitKind {
    INNERDUCT_STRENGTH("innerduct tension", "N"),
    MACHINE_PULL("machine pull", "N"),
    CABLE_HOLD("hold force on the live cable", "N"),
    INNERDUCT_SIDEWALL("sidewall pressure on the innerduct", "N/m"),
    CABLE_SIDEWALL("sidewall pressure on the live cable", "N/m"),
    CABLE_BEND_RADIUS("bend radius of the live cable under load", "m"),
    INNERDUCT_BEND_RADIUS("bend radius of the innerduct in the duct", "m"),
    VAULT_EXIT_RADIUS("bend radius of the innerduct out of the vault", "m"),
    CABLE_EXIT_RADIUS("bend radius of the live cable out of the vault", "m"),
    CABLE_SLACK("cable slack recorded at the vault", "m"),
    TOTAL_BENDS("total bends", "rad"),
    SECTION_LENGTH("length between the vaults", "m");

    private static final double MOST_OF_A_MINIMUM = 10;

    private final String meaning;
    private final String unit;
    private final String key = name().toLowerCase(Locale.ROOT);

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
     * do not: the innerduct is in the bends of its duct already, and the radius out of a vault is that of a guide that can be changed.
     */
    public boolean excludes() {
        return this != INNERDUCT_BEND_RADIUS && this != VAULT_EXIT_RADIUS;
    }

    /**
     * Returns how far a limit is used: found over allowed, or allowed over found for a minimum. A minimum of which there is a tenth or
     * less is treated as used ten times, so that what is missing altogether still is a number.
     */
    public double ratio(double found, double allowed) {
        return isMinimum() ? allowed / Math.max(found, allowed / MOST_OF_A_MINIMUM) : found / allowed;
    }

    /** Returns the word for this limit in columns. */
    public String key() {
        return key;
    }
}
