package org.spanroom.model.learn;

/**
 * What was done in one year, or in all of them: sums over the spans whose work is done. What was not reported is not guessed.
 *
 * @param year in which the spans were reported as done; "all" for all years
 * @param spans how many
 * @param lengthM of those that the run has
 * @param positionsPlanned positions that the run has them gain
 * @param cellsPlaced cells of sleeves that were placed
 * @param innerductKg that was weighed as it came out
 * @param recycledKg that a recycler took
 * @param trenchAvoidedM trench of the new build that was avoided, as the run has it; one for all spans of a section
 * @param boreAvoidedM bored length of it, the same way
 * @param co2eIceKg emissions of its materials, by ICE, surface and encasement once for all spans of a section; never to be added to those by WARM
 * @param co2eWarmKg emissions avoided by what was recycled, by WARM
 * @param costMoney of spans whose cost is reported
 * @param costPlannedMoney what was planned for the same spans
 * @param hours of steps that are reported
 * @param hoursPlanned what was planned for the same steps
 */
public record TotalsRow(
        String year,
        int spans,
        Reported lengthM,
        Reported positionsPlanned,
        Reported cellsPlaced,
        Reported innerductKg,
        Reported recycledKg,
        Reported bags,
        Reported loads,
        Reported trenchAvoidedM,
        Reported boreAvoidedM,
        Reported co2eIceKg,
        Reported co2eWarmKg,
        Reported costMoney,
        Reported costPlannedMoney,
        Reported hours,
        Reported hoursPlanned) {}
