package org.spanroom.model.pull;

import java.util.Locale;

/** Everything that a calculation of pulling forces may rest on without having been measured. */
public enum PullAssumption {
    FRICTION("coefficients of friction are judgment, not measured"),
    BREAKAWAY("the first pull is the steady one times a factor"),
    INNERDUCT_STRESS("the innerduct's wall bears the configured stress, although it is old"),
    MACHINE_AND_VAULT(
            "machine pull, and radius and slack where the machine stands outside a vault, are the configured ones"),
    WANDER("turning that no drawing shows, published for bored pipe"),
    NEIGHBOR_SHARE("the share of the other contents' weight that lies on an innerduct"),
    BEND_RADIUS("a bend's radius: the configured sweep"),
    LEVEL("no elevations: the span is taken as level"),
    VERTICAL_RADIUS("the radius of vertical bends"),
    FLOODED_SEALED("flooded: innerducts are dry inside and float"),
    FLOODED_OPEN("flooded: water fills the innerducts"),
    DUCT_DIAMETER("the duct's inside diameter"),
    INNERDUCT_COUNT("how many innerducts there are"),
    INNERDUCT_SIZE("the innerducts' diameter or wall"),
    CABLE_COUNT("how many cables there are"),
    CABLE_DIAMETER("the cables' diameter"),
    CABLE_MASS("the cables' mass"),
    CABLE_LIVE("a cable of unknown service is taken as live");

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
