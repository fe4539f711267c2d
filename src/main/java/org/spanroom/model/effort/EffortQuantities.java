package org.spanroom.model.effort;

import java.util.Map;
import org.spanroom.model.Check;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.permit.RuledPart;
import org.spanroom.model.permit.ZoneRule;

/**
 * All that hours and money of one span depend on, apart from rates: calculated once, then combined with as many sets of rates as needed.
 *
 * @param innerductsOut how many pulls it takes
 * @param deadCablesOut dead cables that leave the duct with the innerducts
 * @param newCables cables that find a cell in the sleeves that go in
 * @param cablesGained places more than before
 * @param positionsNeeded how many of them new build would have to give: all, or as many as are in demand
 * @param cables that are in the duct and stay
 * @param innerductM3 plastic that comes out, by the average wall
 * @param ductWaterM3 standing water in the duct
 * @param rules those of permit zones that the work is under, and how far
 * @param recoveryPermits permits that recovery is known to need
 * @param buildPermits permits that new build is known to need
 * @param leadDaysAvoided days by which the permits of recovery are there sooner than those of new build
 * @param surfaceAssumed whether the records do not say what the surface is
 * @param rows the rates that apply along the span
 */
public record EffortQuantities(
        double lengthM,
        int innerductsOut,
        int deadCablesOut,
        int sleeves,
        int newCables,
        int cablesGained,
        int positionsNeeded,
        int cables,
        double innerductM3,
        double ductWaterM3,
        VaultWork from,
        VaultWork to,
        Map<ZoneRule, RuledPart> rules,
        int recoveryPermits,
        int buildPermits,
        int leadDaysAvoided,
        Surface surface,
        boolean surfaceAssumed,
        RateRows rows) {
    public EffortQuantities {
        Check.positive("lengthM", lengthM);
        Check.notNegative("innerductsOut", innerductsOut);
        Check.notNegative("sleeves", sleeves);
        Check.notNegative("newCables", newCables);
        Check.notNegative("deadCablesOut", deadCablesOut);
        Check.notNegative("cablesGained", cablesGained);
        Check.within("positionsNeeded", positionsNeeded, 0, cablesGained);
        Check.notNegative("innerductM3", innerductM3);
        Check.notNegative("ductWaterM3", ductWaterM3);
        rules = Map.copyOf(rules);
    }

    /** Returns whether the work is under a rule of permit zones. */
    public boolean isUnder(ZoneRule rule) {
        return !rules.isEmpty() && rules.containsKey(rule);
    }

    /** Returns the meters of the span on which a rule of permit zones applies. */
    public double metersUnder(ZoneRule rule) {
        RuledPart part = rules.get(rule);
        return part == null ? 0 : part.lengthM();
    }

    /** Returns the work at one end. */
    public VaultWork at(SpanEnd end) {
        return end == SpanEnd.A ? from : to;
    }

    /** Returns how many sleeves of the same cells new ducts would need for the positions needed. */
    public int buildSleeves() {
        return newCables == 0 ? 0 : (positionsNeeded * sleeves + newCables - 1) / newCables;
    }

    /**
     * Returns the same span with other positions that new build would have to give.
     *
     * @param newSleeves the sleeves that would lie in the new ducts
     */
    public EffortQuantities needing(int positions, int newSleeves) {
        return new EffortQuantities(
                lengthM,
                innerductsOut,
                deadCablesOut,
                newSleeves,
                positions,
                positions,
                positions,
                cables,
                innerductM3,
                ductWaterM3,
                from,
                to,
                rules,
                recoveryPermits,
                buildPermits,
                leadDaysAvoided,
                surface,
                surfaceAssumed,
                rows);
    }
}
