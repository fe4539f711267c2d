package org.spanroom.model.bore;

import java.util.Optional;
import org.spanroom.model.Check;
import org.spanroom.model.Counted;
import org.spanroom.model.network.Contents;

/**
 * One way to make room in a duct, with its results: this many innerducts come out, or none, in the order of
 * {@link Contents#innerductsByOrderOut}, and sleeves go in beside the others.
 *
 * @param innerductsOut how many pulls it takes; 0 where everything is left in
 * @param emptyOut how many of them hold no cable
 * @param deadCablesOut how many dead cables are also taken out; 0 where they stay
 * @param allowed false where the owner's rules keep it from being proposed: it is shown for comparison
 * @param innerductsLeft how many stay in the duct
 * @param positions where design cables then find a place
 * @param positionsNow how many positions there are with everything left in
 * @param sleeves how many new sleeves go in
 * @param bindingRule the rule that allows no further sleeve
 * @param nextSleeve what is known of one further sleeve; only where packing is the binding rule
 * @param fillRatio area that innerducts left, taken as solid, and the cables that stay close off, over bore area
 * @param fillWithNewRatio the same with a design cable in every cell that is a position
 * @param recoverableMm2 outside areas of the innerducts that come out less the areas of the cables in them that stay
 * @param after what then is in the duct, the new cables too, in the bore less its allowance
 */
public record PullChoice(
        int innerductsOut,
        int emptyOut,
        int deadCablesOut,
        boolean allowed,
        int innerductsLeft,
        Positions positions,
        int positionsNow,
        int sleeves,
        String bindingRule,
        Optional<PackingOutcome> nextSleeve,
        double fillRatio,
        double fillWithNewRatio,
        double recoverableMm2,
        Packing after) {
    public PullChoice {
        Check.notNegative("deadCablesOut", deadCablesOut);
        Check.notNegative("positionsNow", positionsNow);
        Check.notNegative("fillRatio", fillRatio);
        Check.notNegative("fillWithNewRatio", fillWithNewRatio);
    }

    /** Returns how many positions there are then, the reserved ones left out. */
    public int positionsAfter() {
        return positions.free();
    }

    /** Returns how many positions recovery adds; less than 0 where it leaves fewer than there are now. */
    public int positionsGained() {
        return positionsAfter() - positionsNow;
    }

    /** Returns how many design cables go into the new sleeves. */
    public int newCables() {
        return positions.beside();
    }

    /** Returns whether anything comes out: leaving everything in is a choice too, but no recovery. */
    public boolean isRecovery() {
        return innerductsOut > 0;
    }

    PullChoice withReserved(int reserved, int now) {
        return with(positions.withReserved(reserved), now, sleeves, bindingRule, fillWithNewRatio, after);
    }

    /** Returns this choice beside another number of positions that there are with everything left in. */
    public PullChoice withNow(int now) {
        return with(positions, now, sleeves, bindingRule, fillWithNewRatio, after);
    }

    /** Returns this choice where only rigid innerducts let a cable through, for a reason that replaces the binding rule. */
    PullChoice closed(String rule, Packing asItIs) {
        Positions left = positions.inInnerductsOnly();
        return with(left, left.free(), 0, rule, fillRatio, asItIs);
    }

    private PullChoice with(
            Positions others, int now, int otherSleeves, String rule, double withNewRatio, Packing packing) {
        return new PullChoice(
                innerductsOut,
                emptyOut,
                deadCablesOut,
                allowed,
                innerductsLeft,
                others,
                now,
                otherSleeves,
                rule,
                otherSleeves == sleeves ? nextSleeve : Optional.empty(),
                fillRatio,
                withNewRatio,
                recoverableMm2,
                packing);
    }

    /** Returns what comes out, in a few words: {@code 2 of 3 out}, {@code 3 of 3 and 1 dead cable out}. */
    public String words() {
        String pulls = innerductsOut + " of " + (innerductsOut + innerductsLeft);
        return pulls + (deadCablesOut == 0 ? "" : " and " + Counted.of(deadCablesOut, "dead cable")) + " out";
    }
}
