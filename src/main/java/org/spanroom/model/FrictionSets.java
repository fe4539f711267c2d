package org.spanroom.model;

/** The coefficients for each state of a duct. */
public record FrictionSets(FrictionSet lubricated, FrictionSet dry, FrictionSet bad) {
    /**
     * Returns the shipped coefficients: our judgement, since no published value exists for polyethylene innerduct on
     * PVC duct or on itself. They lie within published rows for like pairs: polyethylene jacket in duct 0.30 to 0.40
     * dry and 0.15 to 0.25 lubricated (TES-P-104.05 Table 05-03, 2007), jacket on rigid PVC 0.34 (MESC power cable
     * catalogue p. 71), unknown pairs 0.5 (CommScope conduit manual pp. 68-69).
     */
    public static FrictionSets defaults() {
        return new FrictionSets(
                new FrictionSet(0.20, 0.15, 0.20),
                new FrictionSet(0.35, 0.30, 0.30),
                new FrictionSet(0.50, 0.40, 0.50));
    }

    public FrictionSet of(Friction friction) {
        return switch (friction) {
            case LUBRICATED -> lubricated;
            case DRY -> dry;
            case BAD -> bad;
        };
    }
}
