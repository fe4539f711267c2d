package org.spanroom.model.rank;

import org.spanroom.model.Check;
import org.spanroom.model.network.ScenarioSettings;

/**
 * The chances that a simulation draws from for one span.
 *
 * @param otherSizeRatio that assumed sizes are wrong, to either side
 * @param moreCableRatio of one additional cable, where contents are recorded
 * @param moreCableAssumedRatio the same, where the count of cables is assumed
 * @param blockedRatio that the duct is blocked, where it is recorded as sound or oval
 * @param blockedUnknownRatio the same, where no condition is recorded
 * @param fewRatio that assumed contents are those of the scenario few
 * @param typicalRatio that they are the assumed ones
 * @param manyRatio that they are those of the scenario many
 */
public record SpanChances(
        double otherSizeRatio,
        double moreCableRatio,
        double moreCableAssumedRatio,
        double blockedRatio,
        double blockedUnknownRatio,
        double fewRatio,
        double typicalRatio,
        double manyRatio) {
    private static final double ROUNDING_RATIO = 1e-9;

    public SpanChances {
        Check.within("otherSizeRatio", otherSizeRatio, 0, 1);
        Check.within("moreCableRatio", moreCableRatio, 0, 1);
        Check.within("moreCableAssumedRatio", moreCableAssumedRatio, 0, 1);
        Check.within("blockedRatio", blockedRatio, 0, 1);
        Check.within("blockedUnknownRatio", blockedUnknownRatio, 0, 1);
        if (Math.abs(fewRatio + typicalRatio + manyRatio - 1) > ROUNDING_RATIO) {
            throw new IllegalArgumentException("the chances of few, typical and many must add up to 1, were " + fewRatio
                    + ", " + typicalRatio + " and " + manyRatio);
        }
    }

    /** Returns the chances of the settings, which apply where nothing was learned. */
    public static SpanChances of(UncertaintySettings uncertainty, ScenarioSettings scenarios) {
        return new SpanChances(
                uncertainty.otherSizeRatio(),
                uncertainty.moreCableRatio(),
                uncertainty.moreCableAssumedRatio(),
                uncertainty.blockedRatio(),
                uncertainty.blockedUnknownRatio(),
                scenarios.few().chanceRatio(),
                scenarios.typical().chanceRatio(),
                scenarios.many().chanceRatio());
    }

    /** Returns the chance that assumed counts are right. */
    public double countsRightRatio() {
        return typicalRatio * (1 - moreCableAssumedRatio);
    }
}
