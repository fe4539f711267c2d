package org.spanroom.model.bore;

import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.model.Check;
import org.spanroom.model.network.Contents;

/**
 * One way of recovering room, with all that comes of it: so many innerducts come out in the order of
 * {@link Contents#innerductsByOrderOut}, and sleeves go in beside the rest.
 *
 * @param innerductsOut how many pulls it takes
 * @param emptyOut how many of them hold no cable
 * @param deadCablesOut how many dead cables are also taken out; 0 where they stay
 * @param allowed false where the owner's rules keep it from being proposed: it is shown for comparison
 * @param innerductsLeft how many stay in the duct
 * @param positionsLeft how many of those that stay are empty and wide enough for the design cable
 * @param newCables design cables that go into the sleeves
 * @param cablesGained how many more cables there is a place for than before; never negative
 * @param bindingRule the rule that allows no further sleeve
 * @param nextSleeve what is known of one sleeve more; only where packing is the binding rule
 * @param fillAfterRatio area that innerducts left, taken as solid, and loose cables close off, over bore area
 * @param recoverableMm2 outside areas of the innerducts that come out less the areas of the cables in them that stay
 * @param jamRatio 1.05 times the bore's width over that of three or more equal innerducts that come out; empty without
 * @param after what then lies in the duct, the new cables too, in the bore less its allowance
 */
public record PullChoice(
        int innerductsOut,
        int emptyOut,
        int deadCablesOut,
        boolean allowed,
        int innerductsLeft,
        int positionsLeft,
        int sleeves,
        int newCables,
        int cablesGained,
        String bindingRule,
        Optional<PackingOutcome> nextSleeve,
        double fillAfterRatio,
        double recoverableMm2,
        OptionalDouble jamRatio,
        Packing after) {
    /** Ratio from which three equal items may lock across a bore; from memory of IEEE 1185 and handbooks. */
    private static final double JAM_FROM_RATIO = 2.8;

    /** Ratio above which three equal items cannot lock; from memory of the same sources. */
    private static final double JAM_TO_RATIO = 3.2;

    public PullChoice {
        Check.notNegative("deadCablesOut", deadCablesOut);
        Check.notNegative("cablesGained", cablesGained);
        Check.notNegative("fillAfterRatio", fillAfterRatio);
    }

    /** Returns how many cables there is then a place for. */
    public int positionsAfter() {
        return positionsLeft + newCables;
    }

    /** Returns whether three equal innerducts could lock side by side as they are pulled. */
    public boolean mayJam() {
        double ratio = jamRatio.orElse(0);
        return ratio >= JAM_FROM_RATIO && ratio <= JAM_TO_RATIO;
    }

    /** Returns what comes out, in a few words: {@code 2 of 3 out}, {@code 3 of 3 and 1 dead cable out}. */
    public String words() {
        String pulls = innerductsOut + " of " + (innerductsOut + innerductsLeft);
        return switch (deadCablesOut) {
            case 0 -> pulls + " out";
            case 1 -> pulls + " and 1 dead cable out";
            default -> pulls + " and " + deadCablesOut + " dead cables out";
        };
    }
}
