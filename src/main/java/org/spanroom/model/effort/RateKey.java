package org.spanroom.model.effort;

import java.util.Locale;

/**
 * The name of a rate: what work, material or new build takes or costs. Its last words are its unit; the lower-case name is the
 * key in the rates.
 */
public enum RateKey {
    /** Talk before work, once a shift. */
    BRIEFING_HOURS,
    /** Set and remove cones, signs and barriers, per vault and shift. */
    TRAFFIC_CONTROL_HOURS,
    /** Take off a cover and guard the opening, per vault and shift. */
    VAULT_OPENING_HOURS,
    /** Put a cover back, per vault and shift. */
    VAULT_CLOSING_HOURS,
    /** Air in a vault of which no volume is recorded. */
    VAULT_VOLUME_M3,
    /** Share of a wet vault that is full of water. */
    VAULT_WATER_RATIO,
    /** What a pump takes out. */
    PUMP_M3_PER_HOUR(Sense.DIVIDES),
    /** Air changes before entry. */
    PURGE_AIR_CHANGES,
    /** Least time of ventilating a vault that crews enter. */
    PURGE_LEAST_HOURS,
    /** What a blower moves through its hose. */
    BLOWER_M3_PER_HOUR(Sense.DIVIDES),
    /** Longest time between two tests of the air in an open vault. */
    AIR_RETEST_HOURS(Sense.LESS_COSTS_MORE),
    /** One test of the air. */
    AIR_TEST_HOURS,
    /** Put rod or camera in, read what it met. */
    PROOF_PREPARING_HOURS,
    /** Duct that a rod or a camera goes through in an hour, there and back. */
    PROOF_M_PER_HOUR(Sense.DIVIDES),
    /** Free innerducts and cables from their racks so that they float, per vault. */
    FREEING_VAULT_HOURS,
    /** The same, added for each cable and vault. */
    FREEING_CABLE_HOURS,
    /** Cut one innerduct that runs uncut through a vault, around its live cables. */
    CUTTING_HOURS,
    /** Set the pulling machine and the hold on the cable, once a shift. */
    SET_UP_HOURS,
    /** Take them down, once a shift. */
    TAKE_DOWN_HOURS,
    /** Cut, grip and slit the beginning of one innerduct. */
    PULL_PREPARING_HOURS,
    /** Short test pull of one innerduct: its first meters, slowly, with a watched gauge. */
    TEST_PULL_HOURS,
    /** Innerduct that comes out in an hour of pulling. */
    PULL_FEED_M_PER_HOUR(Sense.DIVIDES),
    /** One dead cable taken out with the innerducts. */
    DEAD_CABLE_HOURS,
    /** Start the rod where sleeves go in by themselves. */
    SLEEVE_PREPARING_HOURS,
    /** Rod through and sleeves drawn back with it. */
    RODDING_M_PER_HOUR(Sense.DIVIDES),
    /** Innerduct chipped, bagged and weighed. */
    CHIPPING_KG_PER_HOUR(Sense.DIVIDES),
    /** Share of it that is done while the next innerduct comes out. */
    CHIPPING_ALONGSIDE_RATIO(Sense.LESS_COSTS_MORE),
    /** Seal one duct mouth. */
    SEALING_HOURS,
    /** Elapsed time of work at two vaults over the sum of both: 0.5 side by side, 1 one after the other. */
    VAULT_ELAPSED_RATIO,
    /** Shift on site by day. */
    DAY_WINDOW_HOURS(Sense.LESS_COSTS_MORE),
    /** Shift on site by night, where night work only. */
    NIGHT_WINDOW_HOURS(Sense.LESS_COSTS_MORE),
    /** Least share of a shift that is taken to be left beside daily work, so that a count of shifts exists at all. */
    LEAST_USABLE_RATIO(Sense.DIVIDES),
    /** Yard to site and back, paid and outside of the window, once a shift. */
    TRAVEL_HOURS,
    /** All on site, attendants outside the vaults included. */
    CREW_PERSONS,
    /** One person's hour with all that is due on it. */
    LABOR_MONEY_PER_HOUR,
    /** More on labor by night. */
    NIGHT_PREMIUM_RATIO,
    /** Flaggers, signs, a truck with an arrow, per hour on site. */
    TRAFFIC_CONTROL_MONEY_PER_HOUR,
    /** Pulling machine, blowers, pumps, gas meters, chipper, per hour on site. */
    EQUIPMENT_MONEY_PER_HOUR,
    /** Records checked, walk along the span, job sheet, per span. */
    ENGINEERING_MONEY,
    /** Permits that recovery needs at least, and new build too. */
    LEAST_PERMITS,
    /** Fee of one permit that recovery needs. */
    PERMIT_MONEY,
    /** Office work for one permit. */
    PERMIT_OFFICE_HOURS,
    /** One hour of it. */
    OFFICE_MONEY_PER_HOUR,
    /** On all costs of recovery; prices of new build already include it. */
    OVERHEAD_RATIO,
    /** Fabric sleeve with its pull tapes. */
    SLEEVE_MONEY_PER_M,
    /** Sleeve left over at each end. */
    SLEEVE_TAIL_M,
    /** Per meter of each innerduct pulled. */
    LUBRICANT_LITERS_PER_M,
    LUBRICANT_MONEY_PER_LITER,
    /** Seal of one duct mouth. */
    SEAL_MONEY,
    /** Density of innerduct. */
    HDPE_KG_PER_M3,
    /** Chips in a bag. */
    BAG_KG(Sense.DIVIDES),
    BAG_MONEY,
    /** Bags on one trip to the recycler. */
    LOAD_KG(Sense.DIVIDES),
    /** One trip. */
    LOAD_MONEY,
    /** Share of the mass that a recycler takes; wet duct gives dirty innerduct. */
    RECYCLED_RATIO(Sense.LESS_COSTS_MORE),
    /** What the recycler pays. */
    RECYCLING_MONEY_PER_KG(Sense.LESS_COSTS_MORE),
    /** For what the recycler does not take. */
    TIPPING_MONEY_PER_KG,
    /** Lawful discharge of pumped water. */
    WATER_MONEY_PER_M3,
    /** Open trench with backfill, first duct laid, without surface. */
    TRENCH_ROADWAY_MONEY_PER_M,
    TRENCH_SIDEWALK_MONEY_PER_M,
    TRENCH_VERGE_MONEY_PER_M,
    /** Bore with the first duct drawn in. */
    BORING_ROADWAY_MONEY_PER_M,
    BORING_SIDEWALK_MONEY_PER_M,
    BORING_VERGE_MONEY_PER_M,
    /** Pits that a bored stretch takes. */
    BORING_PITS,
    /** One of them. */
    BORING_PIT_MONEY,
    /** Of what is cut and restored. */
    TRENCH_WIDTH_M,
    RESTORATION_ROADWAY_MONEY_PER_M2,
    RESTORATION_SIDEWALK_MONEY_PER_M2,
    RESTORATION_VERGE_MONEY_PER_M2,
    /** For cutting a roadway. */
    CUT_FEE_MONEY_PER_M2,
    /** Each additional duct in the same trench or bore. */
    FURTHER_DUCT_MONEY_PER_M,
    /** Cables that one new duct takes. */
    NEW_DUCT_CABLES(Sense.DIVIDES),
    /** Core a vault's wall for one duct end. */
    VAULT_ENTRY_MONEY,
    /** Fee of one permit that new build needs. */
    BUILD_PERMIT_MONEY,
    /** Office work for one of them. */
    BUILD_PERMIT_OFFICE_HOURS,
    /** Survey, utility locates, design. */
    BUILD_ENGINEERING_MONEY_PER_M,
    /** New duct in a trench. */
    PVC_DUCT_KG_PER_M,
    /** PVC pipe. */
    PVC_CO2E_KG_PER_KG,
    /** New duct in a bore. */
    HDPE_DUCT_KG_PER_M,
    /** HDPE pipe. */
    HDPE_CO2E_KG_PER_KG,
    /** Restored roadway. */
    ASPHALT_KG_PER_M2,
    /** Asphalt of 5 % binder; low 4, high 8 %. */
    ASPHALT_CO2E_KG_PER_KG,
    /** Road base per area. */
    BASE_KG_PER_M2,
    /** Aggregate. */
    BASE_CO2E_KG_PER_KG,
    /** Concrete around the duct in a roadway. */
    ENCASEMENT_KG_PER_M,
    /** Concrete RC 28/35; low: general. */
    ENCASEMENT_CO2E_KG_PER_KG,
    /** Restored sidewalk. */
    SLAB_KG_PER_M2,
    /** Concrete, general. */
    SLAB_CO2E_KG_PER_KG,
    /** Fabric sleeve. */
    SLEEVE_KG_PER_M,
    /** Polyamide 6; low 6.6; the making of the fabric is not in it. */
    SLEEVE_CO2E_KG_PER_KG,
    /** Emissions avoided by recycling HDPE. */
    WARM_RECYCLED_KG_PER_KG(Sense.LESS_COSTS_MORE);

    /** Which way a rate works. */
    private enum Sense {
        MORE_COSTS_MORE,
        LESS_COSTS_MORE,
        /** As the last, and it divides, so that it cannot be 0. */
        DIVIDES
    }

    private final Sense sense;

    RateKey() {
        this(Sense.MORE_COSTS_MORE);
    }

    RateKey(Sense sense) {
        this.sense = sense;
    }

    /** Returns the word for this rate in the config. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Returns whether quantities are divided by this rate, such as meters by meters per hour. */
    public boolean divides() {
        return sense == Sense.DIVIDES;
    }

    /** Returns whether the first of two values makes work or money more than the second. */
    boolean isCostlier(double firstInUnit, double secondInUnit) {
        return sense == Sense.MORE_COSTS_MORE ? firstInUnit > secondInUnit : firstInUnit < secondInUnit;
    }
}
