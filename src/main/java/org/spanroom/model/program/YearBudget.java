package org.spanroom.model.program;

/**
 * What a year of a program has.
 *
 * @param money its budget; infinite for no limit
 * @param crewHours hours on site of all crews together
 */
public record YearBudget(double money, double crewHours) {}
