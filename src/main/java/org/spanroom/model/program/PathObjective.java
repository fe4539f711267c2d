package org.spanroom.model.program;

/**
 * What makes one way better than another: the smaller sum of its figures, each times its weight.
 *
 * @param costWeight for each unit of money
 * @param lengthWeightPerM for each meter
 * @param daysWeight for each day until the last of its steps can begin
 * @param chanceWeight for each percentage point that the chance of feasibility is below 100
 */
public record PathObjective(double costWeight, double lengthWeightPerM, double daysWeight, double chanceWeight) {
    public static final PathObjective COST = new PathObjective(1, 0, 0, 0);
    public static final PathObjective LENGTH = new PathObjective(0, 1, 0, 0);
    public static final PathObjective DAYS = new PathObjective(0, 0, 1, 0);
    public static final PathObjective CHANCE = new PathObjective(0, 0, 0, 1);

    public PathObjective {
        double sum = costWeight + lengthWeightPerM + daysWeight + chanceWeight;
        if (!(costWeight >= 0 && lengthWeightPerM >= 0 && daysWeight >= 0 && chanceWeight >= 0 && sum > 0)
                || Double.isInfinite(sum)) {
            throw new IllegalArgumentException("weights must be 0 or more, and one of them more than 0");
        }
    }
}
