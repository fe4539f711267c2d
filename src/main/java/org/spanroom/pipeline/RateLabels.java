package org.spanroom.pipeline;

import static java.util.Map.entry;

import java.util.EnumMap;
import java.util.Map;
import org.spanroom.model.effort.RateKey;

/** What rates are called on the page, where their keys alone do not say what they mean. */
final class RateLabels {
    private static final Map<RateKey, String> LABELS = new EnumMap<>(Map.ofEntries(
            entry(RateKey.VAULT_VOLUME_M3, "air volume of a vault without a recorded one"),
            entry(RateKey.VAULT_WATER_RATIO, "part of a wet vault that is full of water"),
            entry(RateKey.PUMP_M3_PER_HOUR, "pump capacity"),
            entry(RateKey.PURGE_AIR_CHANGES, "air changes before entry"),
            entry(RateKey.PURGE_LEAST_HOURS, "minimum purge time"),
            entry(RateKey.BLOWER_M3_PER_HOUR, "blower capacity"),
            entry(RateKey.AIR_RETEST_HOURS, "longest time between air tests"),
            entry(RateKey.AIR_TEST_HOURS, "one air test"),
            entry(RateKey.PROOF_PREPARING_HOURS, "preparing to prove the path"),
            entry(RateKey.PROOF_M_PER_HOUR, "speed of proving the path"),
            entry(RateKey.FREEING_VAULT_HOURS, "releasing from racks, per vault"),
            entry(RateKey.FREEING_CABLE_HOURS, "releasing from racks, per cable and vault"),
            entry(RateKey.CUTTING_HOURS, "ring-cut of an uncut innerduct"),
            entry(RateKey.SET_UP_HOURS, "setting up the pull"),
            entry(RateKey.TAKE_DOWN_HOURS, "taking the pull down"),
            entry(RateKey.PULL_PREPARING_HOURS, "preparing one innerduct"),
            entry(RateKey.TEST_PULL_HOURS, "test pull of one innerduct"),
            entry(RateKey.PULL_FEED_M_PER_HOUR, "pulling speed"),
            entry(RateKey.DEAD_CABLE_HOURS, "removing one dead cable"),
            entry(RateKey.SLEEVE_PREPARING_HOURS, "preparing sleeves"),
            entry(RateKey.RODDING_M_PER_HOUR, "speed of placing sleeves"),
            entry(RateKey.CHIPPING_KG_PER_HOUR, "chipping speed"),
            entry(RateKey.CHIPPING_ALONGSIDE_RATIO, "part of chipping done while pulling"),
            entry(RateKey.SEALING_HOURS, "sealing one duct mouth"),
            entry(RateKey.VAULT_ELAPSED_RATIO, "elapsed part of work at two vaults"),
            entry(RateKey.DAY_WINDOW_HOURS, "shift by day"),
            entry(RateKey.NIGHT_WINDOW_HOURS, "shift by night"),
            entry(RateKey.LEAST_USABLE_RATIO, "minimum usable part of a shift"),
            entry(RateKey.TRAVEL_HOURS, "travel, per shift"),
            entry(RateKey.CREW_PERSONS, "persons on site"),
            entry(RateKey.LEAST_PERMITS, "minimum number of permits"),
            entry(RateKey.PERMIT_MONEY, "fee of one permit for recovery"),
            entry(RateKey.PERMIT_OFFICE_HOURS, "office work for one permit for recovery"),
            entry(RateKey.OFFICE_MONEY_PER_HOUR, "office work"),
            entry(RateKey.SLEEVE_TAIL_M, "sleeve left over at each end, m"),
            entry(RateKey.LUBRICANT_LITERS_PER_M, "lubricant for each innerduct"),
            entry(RateKey.SEAL_MONEY, "one duct-mouth seal"),
            entry(RateKey.HDPE_KG_PER_M3, "density of innerduct"),
            entry(RateKey.BAG_KG, "chips in a bag, kg"),
            entry(RateKey.BAG_MONEY, "one bag"),
            entry(RateKey.LOAD_KG, "mass on one trip to the recycler, kg"),
            entry(RateKey.LOAD_MONEY, "one trip to the recycler"),
            entry(RateKey.RECYCLED_RATIO, "part of the mass that a recycler accepts"),
            entry(RateKey.RECYCLING_MONEY_PER_KG, "paid by the recycler"),
            entry(RateKey.TIPPING_MONEY_PER_KG, "disposal of the rest"),
            entry(RateKey.WATER_MONEY_PER_M3, "discharge of pumped water"),
            entry(RateKey.BORING_PITS, "pits for a bored length"),
            entry(RateKey.BORING_PIT_MONEY, "one pit"),
            entry(RateKey.TRENCH_WIDTH_M, "width cut and restored, m"),
            entry(RateKey.CUT_FEE_MONEY_PER_M2, "fee for cutting a roadway"),
            entry(RateKey.FURTHER_DUCT_MONEY_PER_M, "each additional duct"),
            entry(RateKey.NEW_DUCT_CABLES, "cables in one new duct"),
            entry(RateKey.VAULT_ENTRY_MONEY, "core drilling of a vault wall for one duct"),
            entry(RateKey.BUILD_PERMIT_MONEY, "fee of one permit for new build"),
            entry(RateKey.BUILD_PERMIT_OFFICE_HOURS, "office work for one permit for new build"),
            entry(RateKey.BUILD_ENGINEERING_MONEY_PER_M, "engineering of new build"),
            entry(RateKey.PVC_DUCT_KG_PER_M, "mass of new duct in a trench"),
            entry(RateKey.PVC_CO2E_KG_PER_KG, "CO2e of PVC pipe"),
            entry(RateKey.HDPE_DUCT_KG_PER_M, "mass of new duct in a bore"),
            entry(RateKey.HDPE_CO2E_KG_PER_KG, "CO2e of HDPE pipe"),
            entry(RateKey.ASPHALT_KG_PER_M2, "mass of restored asphalt"),
            entry(RateKey.ASPHALT_CO2E_KG_PER_KG, "CO2e of asphalt"),
            entry(RateKey.BASE_KG_PER_M2, "mass of the road base"),
            entry(RateKey.BASE_CO2E_KG_PER_KG, "CO2e of the road base"),
            entry(RateKey.ENCASEMENT_KG_PER_M, "mass of concrete around the duct in a roadway"),
            entry(RateKey.ENCASEMENT_CO2E_KG_PER_KG, "CO2e of the concrete around the duct"),
            entry(RateKey.SLAB_KG_PER_M2, "mass of the restored sidewalk slab"),
            entry(RateKey.SLAB_CO2E_KG_PER_KG, "CO2e of the sidewalk slab"),
            entry(RateKey.SLEEVE_KG_PER_M, "mass of sleeve"),
            entry(RateKey.SLEEVE_CO2E_KG_PER_KG, "CO2e of sleeve"),
            entry(RateKey.WARM_RECYCLED_KG_PER_KG, "CO2e avoided by recycling HDPE")));

    private RateLabels() {}

    /** @param fromKey the words of its key, without the unit */
    static String of(RateKey key, String fromKey) {
        return LABELS.getOrDefault(key, fromKey);
    }
}
