package org.spanroom.model.effort;

/** An item that the cost of recovery consists of. */
public enum CostItem implements EffortPart {
    LABOR,
    TRAFFIC_CONTROL,
    EQUIPMENT,
    PERMITS,
    ENGINEERING,
    SLEEVES,
    LUBRICANT,
    SEALS,
    DISPOSAL,
    OVERHEAD,
    /** What the recycler pays, negative. */
    RECYCLING;

    @Override
    public Kind kind() {
        return Kind.COST;
    }
}
