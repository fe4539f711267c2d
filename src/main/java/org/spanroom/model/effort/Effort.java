package org.spanroom.model.effort;

import java.util.OptionalDouble;

/**
 * What recovering one span takes, and what it saves over new build. A span is calculated alone, so that nothing here depends on any
 * other span.
 *
 * @param stepHours site hours by step
 * @param costMoney cost of recovery by item
 */
public record Effort(
        EffortQuantities quantities,
        WorkTime time,
        Amounts<EffortStep> stepHours,
        Amounts<CostItem> costMoney,
        MaterialFlow material,
        NewBuild newBuild) {

    /** Returns the cost of recovery. */
    public double recoveryMoney() {
        return costMoney.total();
    }

    /** Returns the cost of new build for as many places as recovery gains. */
    public double newBuildMoney() {
        return newBuild.costMoney().total();
    }

    /** Returns what recovery saves; negative where new build is cheaper. */
    public double savingMoney() {
        return newBuildMoney() - recoveryMoney();
    }

    /** Returns money saved for each unit of money spent on recovery. */
    public double savingRatio() {
        return recoveryMoney() > 0 ? savingMoney() / recoveryMoney() : 0;
    }

    /** Returns the cost of recovery per metre of place gained for a cable; empty where none is gained. */
    public OptionalDouble recoveryMoneyPerCableM() {
        return perCableM(recoveryMoney());
    }

    /** Returns the cost of new build per metre of place gained for a cable; empty where none is gained. */
    public OptionalDouble newBuildMoneyPerCableM() {
        return perCableM(newBuildMoney());
    }

    private OptionalDouble perCableM(double money) {
        double cableM = quantities.cablesGained() * quantities.lengthM();
        return cableM > 0 ? OptionalDouble.of(money / cableM) : OptionalDouble.empty();
    }
}
