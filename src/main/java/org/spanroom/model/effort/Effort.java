package org.spanroom.model.effort;

import java.util.OptionalDouble;

/**
 * What recovering one span takes, and what it saves over new build. A span is calculated alone, so that nothing here depends on any
 * other span.
 *
 * @param stepHours site hours by step
 * @param costMoney cost of recovery by item
 * @param siteHourMoney cost of one hour on site: crew, traffic control and machines, with overhead; what an hour that is shared saves
 */
public record Effort(
        EffortQuantities quantities,
        WorkTime time,
        Amounts<EffortStep> stepHours,
        Amounts<CostItem> costMoney,
        double siteHourMoney,
        MaterialFlow material,
        NewBuild newBuild) {

    /** Returns the cost of recovery. */
    public double recoveryMoney() {
        return costMoney.total();
    }

    /** Returns the cost of new build for the positions that are needed. */
    public double newBuildMoney() {
        return newBuild.costMoney().total();
    }

    /** Returns what recovery saves; negative where new build is cheaper. */
    public double savingMoney() {
        return newBuildMoney() - recoveryMoney();
    }

    /** Returns money saved for each unit of money spent on recovery. */
    public double savingRatio() {
        return savingRatio(recoveryMoney(), newBuildMoney());
    }

    /** Returns money saved for each unit of money spent on recovery; 0 where none is spent. */
    public static double savingRatio(double recoveryMoney, double newBuildMoney) {
        return recoveryMoney > 0 ? (newBuildMoney - recoveryMoney) / recoveryMoney : 0;
    }

    /** Returns the cost of recovery for each place gained for a cable; empty where none is gained. */
    public OptionalDouble recoveryMoneyPerCable() {
        return share(recoveryMoney(), quantities.cablesGained());
    }

    /** Returns the cost of new build for each position that is needed; empty where none is gained. */
    public OptionalDouble newBuildMoneyPerCable() {
        return share(newBuildMoney(), quantities.positionsNeeded());
    }

    /** Returns the cost of recovery per meter of place gained for a cable; empty where none is gained. */
    public OptionalDouble recoveryMoneyPerCableM() {
        return share(recoveryMoney(), quantities.cablesGained() * quantities.lengthM());
    }

    /** Returns the cost of new build per meter of position that is needed; empty where none is gained. */
    public OptionalDouble newBuildMoneyPerCableM() {
        return share(newBuildMoney(), quantities.positionsNeeded() * quantities.lengthM());
    }

    private static OptionalDouble share(double money, double count) {
        return count > 0 ? OptionalDouble.of(money / count) : OptionalDouble.empty();
    }
}
