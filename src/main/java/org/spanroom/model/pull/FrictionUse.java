package org.spanroom.model.pull;

import java.util.List;

/** How far the tightest limit of a pull is used, in each state of friction; above 1 the limit fails. */
public record FrictionUse(double lubricatedRatio, double dryRatio, double badRatio) {
    public static final FrictionUse NONE = new FrictionUse(0, 0, 0);

    /** Returns, state by state, the larger of both. */
    public FrictionUse max(FrictionUse other) {
        return new FrictionUse(
                Math.max(lubricatedRatio, other.lubricatedRatio),
                Math.max(dryRatio, other.dryRatio),
                Math.max(badRatio, other.badRatio));
    }

    /** Returns the three in percent: lubricated, dry, bad. */
    public List<Double> percents() {
        return List.of(100 * lubricatedRatio, 100 * dryRatio, 100 * badRatio);
    }
}
