package org.spanroom.learn;

/**
 * What a run plans for one span, by its records and rates.
 *
 * @param sectionId name of its section
 * @param positionsGained positions that recovery adds
 * @param siteHours over all steps
 * @param costMoney of recovery
 * @param trenchM trench of the new build that is avoided
 * @param boreM bored length of it
 * @param co2eIceKg emissions of its materials less those of the sleeves, by ICE
 * @param co2eDigKg the part of it that a trench emits once, however many ducts lie in it
 * @param warmKgPerKg emissions avoided by recycling a kilogram, by EPA WARM
 */
public record PlannedWork(
        String sectionId,
        double lengthM,
        int positionsGained,
        double siteHours,
        double costMoney,
        double trenchM,
        double boreM,
        double co2eIceKg,
        double co2eDigKg,
        double warmKgPerKg) {}
