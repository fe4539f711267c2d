package org.spanroom.model;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The rates as shipped in config/rates.yaml, which a test holds to these. */
final class ShippedRates {
    private static final String ILLUSTRATIVE = "illustrative";
    private static final String NOBODY_ENTERS = "illustrative: nobody climbs into it";
    private static final String ICE = "ICE v2.0, University of Bath";
    private static final String SET = "2026-11-25";

    private final Map<RateKey, Rate> rates = new EnumMap<>(RateKey.class);

    private ShippedRates() {}

    /** Returns one rate for each key. */
    static Map<RateKey, Rate> standard() {
        var shipped = new ShippedRates();
        shipped.vaults();
        shipped.pulls();
        shipped.money();
        shipped.material();
        shipped.build();
        shipped.carbon();
        return shipped.rates;
    }

    private void vaults() {
        put(RateKey.BRIEFING_HOURS, 0.25, 0.15, 0.5);
        put(RateKey.TRAFFIC_CONTROL_HOURS, 0.4, 0.2, 0.8);
        put(RateKey.VAULT_OPENING_HOURS, 0.1, 0.05, 0.25);
        put(RateKey.VAULT_CLOSING_HOURS, 0.1, 0.05, 0.25);
        rates.put(
                RateKey.VAULT_VOLUME_M3,
                new Rate(
                        13.6,
                        4.1,
                        20,
                        "480 ft3, the vault of a worked example on a trade page; low: least inside 6 x 4 x 6 ft of MIL-HDBK-1012/3; high illustrative",
                        SET));
        put(RateKey.VAULT_WATER_RATIO, 0.5, 0.1, 1);
        put(RateKey.PUMP_M3_PER_HOUR, 40, 20, 60);
        rates.put(
                RateKey.PURGE_AIR_CHANGES,
                new Rate(
                        7,
                        7,
                        10.5,
                        "seven, and half as many again where toxic gas was found: trade pages, makers not named",
                        SET));
        rates.put(
                RateKey.PURGE_LEAST_HOURS,
                new Rate(
                        0.16667,
                        0.08333,
                        0.25,
                        "10 min of blower where gas was found: UFC 3-560-01 (2006) 11-6.3.4.2; low: 5 min, trade page; high illustrative",
                        "2006"));
        rates.put(
                RateKey.BLOWER_M3_PER_HOUR,
                new Rate(
                        1087,
                        850,
                        1700,
                        "640 cfm with one bend, worked example on a trade page; range illustrative",
                        SET));
        put(RateKey.AIR_TEST_HOURS, 0.05, 0.03, 0.1);
    }

    private void pulls() {
        put(RateKey.FREEING_VAULT_HOURS, 0.1, 0.05, 0.3);
        put(RateKey.FREEING_CABLE_HOURS, 0.05, 0.02, 0.15);
        put(RateKey.SET_UP_HOURS, 0.55, 0.3, 1);
        put(RateKey.TAKE_DOWN_HOURS, 0.35, 0.2, 0.6);
        put(RateKey.PULL_PREPARING_HOURS, 0.33, 0.2, 0.6);
        put(RateKey.PULL_FEED_M_PER_HOUR, 330, 180, 550);
        put(RateKey.SLEEVE_PREPARING_HOURS, 0.2, 0.1, 0.4);
        put(RateKey.RODDING_M_PER_HOUR, 500, 300, 900);
        put(RateKey.CHIPPING_KG_PER_HOUR, 250, 120, 400);
        put(RateKey.CHIPPING_ALONGSIDE_RATIO, 0.7, 0.4, 0.9);
        put(RateKey.SEALING_HOURS, 0.12, 0.05, 0.25);
        put(RateKey.VAULT_ELAPSED_RATIO, 0.75, 0.5, 1);
        rates.put(
                RateKey.DAY_WINDOW_HOURS,
                new Rate(
                        7.5,
                        6,
                        9,
                        "8:30 to 16:00: rules of Silverton OH for the right of way; range illustrative",
                        SET));
        put(RateKey.NIGHT_WINDOW_HOURS, 7, 5, 8);
        put(RateKey.TRAVEL_HOURS, 1, 0.5, 1.5);
    }

    private void money() {
        put(RateKey.CREW_PERSONS, 5, 4, 7);
        put(RateKey.LABOUR_MONEY_PER_HOUR, 95, 70, 130);
        put(RateKey.NIGHT_PREMIUM_RATIO, 0.15, 0.1, 0.3);
        put(RateKey.TRAFFIC_CONTROL_MONEY_PER_HOUR, 120, 60, 220);
        put(RateKey.EQUIPMENT_MONEY_PER_HOUR, 160, 100, 260);
        put(RateKey.ENGINEERING_MONEY, 600, 300, 1500);
        put(RateKey.PERMIT_MONEY, 150, 0, 600);
        put(RateKey.PERMIT_OFFICE_HOURS, 2, 0.5, 6);
        put(RateKey.OFFICE_MONEY_PER_HOUR, 85, 60, 120);
        put(RateKey.OVERHEAD_RATIO, 0.15, 0.1, 0.25);
    }

    private void material() {
        put(RateKey.SLEEVE_MONEY_PER_M, 6.5, 4, 10);
        put(RateKey.SLEEVE_TAIL_M, 2, 1, 4);
        put(RateKey.LUBRICANT_LITRES_PER_M, 0.02, 0, 0.06);
        put(RateKey.LUBRICANT_MONEY_PER_LITRE, 6, 4, 10);
        put(RateKey.SEAL_MONEY, 60, 30, 120);
        rates.put(
                RateKey.HDPE_KG_PER_M3,
                new Rate(
                        955,
                        941,
                        955,
                        "ASTM D1505 range quoted on a conduit sheet; 955 with the average wall gives the published weights",
                        SET));
        put(RateKey.BAG_KG, 20, 15, 25);
        put(RateKey.BAG_MONEY, 2, 1, 4);
        put(RateKey.LOAD_KG, 1000, 500, 2000);
        put(RateKey.LOAD_MONEY, 180, 100, 350);
        put(RateKey.RECYCLED_RATIO, 0.8, 0.3, 1);
        put(RateKey.RECYCLING_MONEY_PER_KG, 0.15, 0, 0.4);
        put(RateKey.TIPPING_MONEY_PER_KG, 0.08, 0.04, 0.15);
        put(RateKey.WATER_MONEY_PER_M3, 15, 0, 60);
    }

    private void build() {
        put(RateKey.TRENCH_ROADWAY_MONEY_PER_M, 250, 120, 500);
        put(RateKey.TRENCH_SIDEWALK_MONEY_PER_M, 150, 87, 300);
        rates.put(
                RateKey.TRENCH_VERGE_MONEY_PER_M,
                new Rate(
                        87,
                        33,
                        164,
                        "26.50 $/ft median of trenching, tail 10 to 50 $/ft: deployment cost report of the Fiber Broadband Association as the press gave it",
                        "2024"));
        put(RateKey.BORING_ROADWAY_MONEY_PER_M, 240, 82, 500);
        put(RateKey.BORING_SIDEWALK_MONEY_PER_M, 200, 82, 400);
        rates.put(
                RateKey.BORING_VERGE_MONEY_PER_M,
                new Rate(
                        82,
                        60,
                        164,
                        "26.50 $/ft over 1.06 (trenching 6 % over boring): the same reports; range illustrative",
                        "2024"));
        put(RateKey.BORING_PIT_MONEY, 1800, 800, 4000);
        rates.put(
                RateKey.TRENCH_WIDTH_M,
                new Rate(0.6, 0.3, 0.9, "0.6 m, the example of the carbon reckoning; range illustrative", SET));
        put(RateKey.RESTORATION_ROADWAY_MONEY_PER_M2, 120, 60, 250);
        put(RateKey.RESTORATION_SIDEWALK_MONEY_PER_M2, 100, 60, 200);
        put(RateKey.RESTORATION_VERGE_MONEY_PER_M2, 10, 4, 25);
        rates.put(
                RateKey.CUT_FEE_MONEY_PER_M2,
                new Rate(
                        23.92, 0, 35.88, "20 $/yd2 at 5 to 10 years, 30 up to about 3: El Mirage AZ, appendix A", SET));
        put(RateKey.FURTHER_DUCT_MONEY_PER_M, 14, 8, 30);
        rates.put(
                RateKey.NEW_DUCT_CABLES,
                new Rate(9, 3, 9, "three 3-cell sleeves in a 4-in duct: common practice, no source", SET));
        put(RateKey.VAULT_ENTRY_MONEY, 900, 400, 2000);
        put(RateKey.BUILD_PERMIT_MONEY, 600, 150, 2500);
        put(RateKey.BUILD_PERMIT_OFFICE_HOURS, 8, 3, 30);
        put(RateKey.BUILD_ENGINEERING_MONEY_PER_M, 12, 6, 25);
    }

    private void carbon() {
        rates.put(
                RateKey.PVC_DUCT_KG_PER_M,
                new Rate(
                        1.79,
                        1.2,
                        2.5,
                        "4-in telephone type C: OD 4.350 in, wall 0.150 in, 1400 kg/m3, computed; range illustrative",
                        SET));
        rates.put(RateKey.PVC_CO2E_KG_PER_KG, new Rate(3.23, 3.23, 3.23, ICE, "2011"));
        rates.put(
                RateKey.HDPE_DUCT_KG_PER_M,
                new Rate(
                        3.39,
                        2.5,
                        3.5,
                        "4-in SDR 11: OD 4.500 in, average wall 0.4335 in, 950 kg/m3, computed; range illustrative",
                        SET));
        rates.put(RateKey.HDPE_CO2E_KG_PER_KG, new Rate(2.52, 2.52, 2.52, ICE, "2011"));
        rates.put(RateKey.ASPHALT_KG_PER_M2, new Rate(230, 115, 460, "0.10 m of 2300 kg/m3; range illustrative", SET));
        rates.put(RateKey.ASPHALT_CO2E_KG_PER_KG, new Rate(0.071, 0.066, 0.086, ICE, "2011"));
        rates.put(RateKey.BASE_KG_PER_M2, new Rate(300, 150, 600, "0.15 m of 2000 kg/m3; range illustrative", SET));
        rates.put(RateKey.BASE_CO2E_KG_PER_KG, new Rate(0.005, 0.005, 0.005, ICE, "2011"));
        rates.put(RateKey.ENCASEMENT_KG_PER_M, new Rate(216, 0, 216, "0.3 x 0.3 m of 2400 kg/m3; low: none", SET));
        rates.put(RateKey.ENCASEMENT_CO2E_KG_PER_KG, new Rate(0.148, 0.107, 0.148, ICE, "2011"));
        rates.put(RateKey.SLAB_KG_PER_M2, new Rate(240, 120, 360, "0.10 m of 2400 kg/m3; range illustrative", SET));
        rates.put(RateKey.SLAB_CO2E_KG_PER_KG, new Rate(0.107, 0.107, 0.148, ICE, "2011"));
        put(RateKey.SLEEVE_KG_PER_M, 0.05, 0.03, 0.1);
        rates.put(RateKey.SLEEVE_CO2E_KG_PER_KG, new Rate(9.14, 7.92, 9.14, ICE, "2011"));
        rates.put(
                RateKey.WARM_RECYCLED_KG_PER_KG,
                new Rate(0.838, 0.838, 0.838, "EPA WARM v16, exhibit 5-11: 0.76 t per short ton x 1.10231", "2023-12"));
    }

    private void put(RateKey key, double valueInUnit, double lowInUnit, double highInUnit) {
        rates.put(key, new Rate(valueInUnit, lowInUnit, highInUnit, ILLUSTRATIVE, SET));
    }

    static List<RateOverride> byVaultKind() {
        return List.of(
                new RateOverride("handhole", RateKey.VAULT_VOLUME_M3, 0.6, 0.2, 1.5, ILLUSTRATIVE, SET),
                new RateOverride("handhole", RateKey.PURGE_AIR_CHANGES, 0, 0, 7, NOBODY_ENTERS, SET),
                new RateOverride("handhole", RateKey.PURGE_LEAST_HOURS, 0, 0, 0.08333, NOBODY_ENTERS, SET),
                new RateOverride("pull box", RateKey.VAULT_VOLUME_M3, 0.4, 0.1, 1, ILLUSTRATIVE, SET),
                new RateOverride("pull box", RateKey.PURGE_AIR_CHANGES, 0, 0, 7, NOBODY_ENTERS, SET),
                new RateOverride("pull box", RateKey.PURGE_LEAST_HOURS, 0, 0, 0.08333, NOBODY_ENTERS, SET),
                new RateOverride("vault", RateKey.VAULT_VOLUME_M3, 20, 10, 40, ILLUSTRATIVE, SET));
    }

    static List<RateOverride> byZoneKind() {
        return List.of(
                new RateOverride(
                        "heritage", RateKey.RESTORATION_ROADWAY_MONEY_PER_M2, 280, 150, 500, ILLUSTRATIVE, SET),
                new RateOverride(
                        "heritage", RateKey.RESTORATION_SIDEWALK_MONEY_PER_M2, 240, 150, 450, ILLUSTRATIVE, SET),
                new RateOverride("environmental", RateKey.WATER_MONEY_PER_M3, 60, 20, 150, ILLUSTRATIVE, SET),
                new RateOverride("rail", RateKey.PERMIT_MONEY, 2500, 800, 8000, ILLUSTRATIVE, SET),
                new RateOverride(
                        "cut_ban",
                        RateKey.CUT_FEE_MONEY_PER_M2,
                        35.88,
                        23.92,
                        71.76,
                        "30 $/yd2 up to about 3 years: El Mirage AZ, appendix A; range illustrative",
                        SET),
                new RateOverride("school", RateKey.DAY_WINDOW_HOURS, 6, 5, 7, ILLUSTRATIVE, SET));
    }
}
