package org.spanroom.model.pull;

/** The coefficients for each state of a duct. */
public record FrictionSets(FrictionSet lubricated, FrictionSet dry, FrictionSet bad) {

    public FrictionSet of(Friction friction) {
        return switch (friction) {
            case LUBRICATED -> lubricated;
            case DRY -> dry;
            case BAD -> bad;
        };
    }
}
