package org.spanroom.model.pull;

import java.util.List;
import org.spanroom.model.Check;
import org.spanroom.model.network.Duct;

/**
 * What the calculation of pulling forces takes from the config.
 *
 * @param friction coefficients for each state of a duct
 * @param judgedBy the state by which a span is judged; the others are shown beside it
 * @param wanderRadPerM turning per meter of straight that no drawing shows: reel memory and undulation; 0 for none
 * @param breakawayRatio the first pull over the steady one
 * @param slitterDragN pull on the cable at the pulling end, where the innerduct is slit off it
 * @param simpleCapstan true to leave the weight out of bends; false for the hyperbolic form
 * @param sealedWhenFlooded true where an innerduct in a flooded duct is treated as dry inside, so that it floats; false where
 *     water fills it
 * @param innerductDensityKgPerM3 density of the innerduct's material
 * @param gradeToleranceM how far an elevation may be from a straight grade before it makes a vertical bend
 * @param gradeRadiusM radius that is assumed for vertical bends
 * @param endPreferencePoints by how many points of percent the tightest limit may be used more at an end that is a better place for
 *     the machine, and that end be proposed anyway
 * @param pause when a crew pauses a pull
 * @param frictionByType friction in ducts of some types and ages instead, where these are recorded; the first that fits counts
 */
public record PullSettings(
        FrictionSets friction,
        Friction judgedBy,
        double wanderRadPerM,
        double breakawayRatio,
        double slitterDragN,
        boolean simpleCapstan,
        boolean sealedWhenFlooded,
        double innerductDensityKgPerM3,
        double gradeToleranceM,
        double gradeRadiusM,
        double endPreferencePoints,
        NeighborSettings neighbors,
        PullLimits limits,
        PauseSettings pause,
        List<TypeFriction> frictionByType) {
    public PullSettings {
        frictionByType = List.copyOf(frictionByType);
        Check.notNegative("wanderRadPerM", wanderRadPerM);
        Check.within("breakawayRatio", breakawayRatio, 1, 5);
        Check.notNegative("slitterDragN", slitterDragN);
        Check.positive("innerductDensityKgPerM3", innerductDensityKgPerM3);
        Check.notNegative("gradeToleranceM", gradeToleranceM);
        Check.positive("gradeRadiusM", gradeRadiusM);
        Check.within("endPreferencePoints", endPreferencePoints, 0, 100);
    }

    /** Settings by which friction is the same in ducts of every type and age, and crews pause at no force below STOP. */
    public PullSettings(
            FrictionSets friction,
            Friction judgedBy,
            double wanderRadPerM,
            double breakawayRatio,
            double slitterDragN,
            boolean simpleCapstan,
            boolean sealedWhenFlooded,
            double innerductDensityKgPerM3,
            double gradeToleranceM,
            double gradeRadiusM,
            double endPreferencePoints,
            NeighborSettings neighbors,
            PullLimits limits) {
        this(
                friction,
                judgedBy,
                wanderRadPerM,
                breakawayRatio,
                slitterDragN,
                simpleCapstan,
                sealedWhenFlooded,
                innerductDensityKgPerM3,
                gradeToleranceM,
                gradeRadiusM,
                endPreferencePoints,
                neighbors,
                limits,
                PauseSettings.AT_STOP,
                List.of());
    }

    /** Returns the settings for one duct: with the friction of its type and age, the same for all types. */
    public PullSettings forDuct(Duct duct) {
        for (TypeFriction byType : frictionByType) {
            if (byType.fits(duct)) {
                return withFriction(byType.friction());
            }
        }
        return this;
    }

    /** Returns the same settings with other friction, in ducts of every type and age. */
    public PullSettings withFriction(FrictionSets other) {
        return new PullSettings(
                other,
                judgedBy,
                wanderRadPerM,
                breakawayRatio,
                slitterDragN,
                simpleCapstan,
                sealedWhenFlooded,
                innerductDensityKgPerM3,
                gradeToleranceM,
                gradeRadiusM,
                endPreferencePoints,
                neighbors,
                limits,
                pause,
                List.of());
    }
}
