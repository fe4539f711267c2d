package org.spanroom.learn;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.effort.EffortStep;
import org.spanroom.model.effort.RateKey;

/**
 * Something whose ratio of actual to planned is learned.
 *
 * @param key its word in columns
 * @param rates that follow from the ratio; none where it is shown only
 * @param hours whether the ratio is one of hours, so that rates that divide go the other way; otherwise it is that of the rate itself
 * @param slowerOnly whether only a ratio above 1 is followed: the rate belongs to a minimum for safety
 */
record Learnable(String key, List<RateKey> rates, boolean hours, boolean slowerOnly) {
    static final Learnable LUBRICANT = quantity("lubricant", RateKey.LUBRICANT_LITERS_PER_M);
    static final Learnable SLEEVE_TAIL = quantity("sleeve_tail", RateKey.SLEEVE_TAIL_M);
    static final Learnable BAG_MASS = quantity("bag_mass", RateKey.BAG_KG);
    static final Learnable LOAD_MASS = quantity("load_mass", RateKey.LOAD_KG);
    static final Learnable RECYCLED_SHARE = quantity("recycled_share", RateKey.RECYCLED_RATIO);
    static final Learnable CREW = quantity("crew", RateKey.CREW_PERSONS);
    static final Learnable INNERDUCT_MASS = quantity("innerduct_mass");
    static final Learnable COST = quantity("cost");

    private static final List<Learnable> QUANTITIES =
            List.of(LUBRICANT, SLEEVE_TAIL, BAG_MASS, LOAD_MASS, RECYCLED_SHARE, CREW, INNERDUCT_MASS, COST);

    Learnable {
        rates = List.copyOf(rates);
    }

    private static Learnable quantity(String key, RateKey... rates) {
        return new Learnable(key, List.of(rates), false, false);
    }

    /** Returns what is learned of the hours of a step. */
    static Learnable of(EffortStep step) {
        return new Learnable(step.key(), rates(step), true, step == EffortStep.VENTILATING);
    }

    /** Returns all, the steps in the order of the work first. */
    static List<Learnable> all() {
        var all = new ArrayList<Learnable>();
        for (EffortStep step : EffortStep.values()) {
            all.add(of(step));
        }
        all.addAll(QUANTITIES);
        return all;
    }

    /** Minimums of sources, and shares of time, are not rates of a step: reports do not change them. */
    private static List<RateKey> rates(EffortStep step) {
        return switch (step) {
            case TRAFFIC_CONTROL -> List.of(RateKey.TRAFFIC_CONTROL_HOURS);
            case BRIEFING -> List.of(RateKey.BRIEFING_HOURS);
            case OPENING -> List.of(RateKey.VAULT_OPENING_HOURS);
            case PUMPING -> List.of(RateKey.PUMP_M3_PER_HOUR);
            case VENTILATING -> List.of(RateKey.BLOWER_M3_PER_HOUR);
            case AIR_TEST -> List.of(RateKey.AIR_TEST_HOURS);
            case PROOF -> List.of(RateKey.PROOF_PREPARING_HOURS, RateKey.PROOF_M_PER_HOUR);
            case FREEING -> List.of(RateKey.FREEING_VAULT_HOURS, RateKey.FREEING_CABLE_HOURS);
            case CUTTING -> List.of(RateKey.CUTTING_HOURS);
            case SET_UP -> List.of(RateKey.SET_UP_HOURS);
            case TEST_PULL -> List.of(RateKey.TEST_PULL_HOURS);
            case PULLING -> List.of(RateKey.PULL_PREPARING_HOURS, RateKey.PULL_FEED_M_PER_HOUR);
            case DEAD_CABLES -> List.of(RateKey.DEAD_CABLE_HOURS);
            case SLEEVES -> List.of(RateKey.SLEEVE_PREPARING_HOURS, RateKey.RODDING_M_PER_HOUR);
            case CHIPPING -> List.of(RateKey.CHIPPING_KG_PER_HOUR);
            case SEALING -> List.of(RateKey.SEALING_HOURS);
            case TAKE_DOWN -> List.of(RateKey.TAKE_DOWN_HOURS);
            case CLOSING -> List.of(RateKey.VAULT_CLOSING_HOURS);
        };
    }
}
