package org.spanroom.model.effort;

/**
 * What comes out of a duct and what goes in.
 *
 * @param innerductKg plastic out
 * @param recycledKg of it, what a recycler takes
 * @param waterM3 pumped out of vaults and duct, over all shifts
 * @param sleeveM sleeve with its ends
 * @param co2eWarmKg emissions avoided by recycling, by EPA WARM; never to be added to those by ICE
 */
public record MaterialFlow(
        double innerductKg,
        double recycledKg,
        int bags,
        int loads,
        double waterM3,
        double sleeveM,
        double lubricantLiters,
        double co2eWarmKg) {}
