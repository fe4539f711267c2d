package org.spanroom.model.program;

/**
 * What makes one way better than another: the smaller sum of its figures, each times its weight.
 *
 * @param weightPerMoney for each unit of money
 * @param weightPerM for each meter
 * @param weightPerDays for each day until the last of its steps can begin
 * @param weightPerPercent for each percentage point that the chance of feasibility is below 100
 */
public record PathObjective(double weightPerMoney, double weightPerM, double weightPerDays, double weightPerPercent) {
    public static final PathObjective COST = new PathObjective(1, 0, 0, 0);
    public static final PathObjective LENGTH = new PathObjective(0, 1, 0, 0);
    public static final PathObjective DAYS = new PathObjective(0, 0, 1, 0);
    public static final PathObjective CHANCE = new PathObjective(0, 0, 0, 1);

    public PathObjective {
        double sum = weightPerMoney + weightPerM + weightPerDays + weightPerPercent;
        if (!(weightPerMoney >= 0 && weightPerM >= 0 && weightPerDays >= 0 && weightPerPercent >= 0 && sum > 0)
                || Double.isInfinite(sum)) {
            throw new IllegalArgumentException("weights must be 0 or more, and one of them more than 0");
        }
    }
}
