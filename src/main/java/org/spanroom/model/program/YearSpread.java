package org.spanroom.model.program;

/**
 * How certain a year of the program is: over the draws of the run, in each of which some recoveries fail.
 *
 * @param year number of the year, from 0
 * @param lowPositions positions added that 9 of 10 draws reach
 * @param likelyPositions positions added that half of the draws reach
 * @param highPositions positions added that 1 of 10 draws reaches
 */
public record YearSpread(int year, double lowPositions, double likelyPositions, double highPositions) {}
