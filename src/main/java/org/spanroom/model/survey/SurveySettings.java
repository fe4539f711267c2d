package org.spanroom.model.survey;

import org.spanroom.model.Check;

/**
 * How many vaults a crew may open, and how they are chosen.
 *
 * @param vaults how many visits there are; 0: no plan is made
 * @param roadwayWorthRatio what a visit to a vault in the roadway is worth, of one beside it: traffic control takes the rest
 * @param wetWorthRatio the same where water must be pumped out first
 */
public record SurveySettings(int vaults, double roadwayWorthRatio, double wetWorthRatio) {
    private static final int MOST_VAULTS = 10_000;

    public SurveySettings {
        if (vaults < 0 || vaults > MOST_VAULTS) {
            throw new IllegalArgumentException("vaults must be from 0 to " + MOST_VAULTS + ", was " + vaults);
        }
        Check.within("roadwayWorthRatio", roadwayWorthRatio, 0, 1);
        Check.within("wetWorthRatio", wetWorthRatio, 0, 1);
    }
}
