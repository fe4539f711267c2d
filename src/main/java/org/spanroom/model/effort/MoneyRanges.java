package org.spanroom.model.effort;

/**
 * The ranges of what recovering costs, what new build costs instead, and what is saved. Each consists of its own percentiles: the low
 * saving is that of no one drawing with the low cost of new build.
 */
public record MoneyRanges(MoneyRange recovery, MoneyRange newBuild, MoneyRange saving) {}
