package org.spanroom.model.pull;

import java.util.Locale;

/** Everything that a calculation of pulling forces may rest on without having been measured. */
public enum PullAssumption {
    FRICTION("friction coefficients are judgment, not measured here"),
    BREAKAWAY("breakaway force: the steady force times a factor"),
    INNERDUCT_STRESS("the aged innerduct wall withstands the configured stress"),
    MACHINE_AND_VAULT("machine pull, and exit radius and slack for a machine outside the vault, are configured values"),
    WANDER("bending that is not drawn (wander), published for bored pipe"),
    NEIGHBOR_SHARE("share of the other contents' weight that rests on an innerduct"),
    BEND_RADIUS("bend radius: the configured sweep"),
    LEVEL("no elevation recorded: the span is treated as level"),
    VERTICAL_RADIUS("the radius of vertical bends"),
    FLOODED_SEALED("flooded: innerducts are dry inside and float"),
    FLOODED_OPEN("flooded: water fills the innerducts"),
    DUCT_DIAMETER("the duct's inside diameter"),
    INNERDUCT_COUNT("how many innerducts there are"),
    INNERDUCT_SIZE("the innerducts' diameter or wall"),
    CABLE_COUNT("how many cables there are"),
    CABLE_DIAMETER("the cables' diameter"),
    CABLE_MASS("the cables' mass"),
    CABLE_LIVE("service status unknown: the cable is treated as live");

    private final String explanation;

    PullAssumption(String explanation) {
        this.explanation = explanation;
    }

    public String explanation() {
        return explanation;
    }

    /** Returns the word for this assumption in columns. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
