package org.spanroom.model.effort;

/** An item that the cost of new build consists of. */
public enum BuildItem implements EffortPart {
    PLACING,
    RESTORATION,
    CUT_FEES,
    FURTHER_DUCTS,
    VAULT_ENTRIES,
    SLEEVES,
    PERMITS,
    ENGINEERING;

    @Override
    public Kind kind() {
        return Kind.NEW_BUILD;
    }
}
