package org.spanroom.effort;

import org.spanroom.model.effort.Amounts;
import org.spanroom.model.effort.BuildItem;
import org.spanroom.model.effort.CarbonItem;
import org.spanroom.model.effort.CostItem;
import org.spanroom.model.effort.EffortPart;
import org.spanroom.model.effort.EffortStep;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateRows;

/** A ledger that keeps the total of each part. */
final class Totals implements Ledger {
    private final double[] hours = new double[EffortStep.values().length];
    private final double[] cost = new double[CostItem.values().length];
    private final double[] build = new double[BuildItem.values().length];
    private final double[] carbon = new double[CarbonItem.values().length];

    @Override
    @SuppressWarnings("EnumOrdinal") // packed in the order of the constants, in memory only
    public void note(
            EffortPart part, String place, double quantity, RateKey key, RateRows at, double factor, double amount) {
        of(part.kind())[part.ordinal()] += amount;
    }

    Amounts<EffortStep> hours() {
        return new Amounts<>(hours);
    }

    Amounts<CostItem> cost() {
        return new Amounts<>(cost);
    }

    Amounts<BuildItem> build() {
        return new Amounts<>(build);
    }

    Amounts<CarbonItem> carbon() {
        return new Amounts<>(carbon);
    }

    private double[] of(EffortPart.Kind kind) {
        return switch (kind) {
            case HOURS -> hours;
            case COST -> cost;
            case NEW_BUILD -> build;
            case CARBON -> carbon;
        };
    }
}
