package org.spanroom.effort;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateSettings;
import org.spanroom.model.network.AirSupplyReason;
import org.spanroom.model.network.AirTest;
import org.spanroom.model.network.InsideSize;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultFacts;
import org.spanroom.model.network.VaultNeeds;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.network.VolumeBasis;
import org.spanroom.testing.Changed;

class VaultAssessorTest {
    private static final double FT3_M3 = Math.pow(EffortCase.FT_M, 3);
    private static final VaultAssessor SHIPPED = assessor(Map.of());

    private static VaultAssessor assessor(Map<RateKey, Double> changes) {
        RateSettings settings = ShippedConfig.get().rates();
        Map<RateKey, Rate> standard = new EnumMap<>(settings.standard());
        changes.forEach((key, value) -> standard.put(key, new Rate(value, value, value, "test", "2026")));
        return new VaultAssessor(
                Changed.of(settings, "standard", standard), ShippedConfig.get().vaultKinds());
    }

    private static Vault vault(String kind, VaultSite site, Answer gasFound) {
        var facts = new VaultFacts(
                VolumeBasis.UNKNOWN,
                OptionalDouble.empty(),
                InsideSize.UNKNOWN,
                OptionalDouble.empty(),
                gasFound,
                Answer.UNKNOWN,
                Optional.empty());
        return new Vault(0, "V", -30, 40, List.of(), OptionalDouble.empty(), kind, site, facts, List.of());
    }

    private static Vault ofVolume(String kind, double volumeM3) {
        return vault(kind, new VaultSite(OptionalDouble.of(volumeM3), Answer.NO, "", Answer.UNKNOWN), Answer.UNKNOWN);
    }

    /**
     * Ventilation guides of the trade: 480 ft3 by 640 cfm, seven changes, 5.25 min. From the same formula 7 V/C: 144 ft3 by 500 cfm 2.016
     * min, 504 ft3 by 500 cfm 7.056 min, 2000 ft3 by 640 cfm 21.875 min. The least time of 10 min is that of UFC 3-560-01 (2006), para
     * 11-6.3.4.2.
     */
    @ParameterizedTest(name = "{0} ft3 by {1} ft3/min, at least {2} min: {3} min")
    @CsvSource({
        "480, 640, 0, 5.25",
        "144, 500, 0, 2.016",
        "504, 500, 0, 7.056",
        "480, 640, 10, 10",
        "2000, 640, 10, 21.875"
    })
    void purgingTakesSevenChangesAndNoLessThanTheMinimum(
            double volumeFt3, double blowerFt3PerMin, double leastMin, double expectedMin) {
        VaultAssessor assessor = assessor(Map.of(
                RateKey.BLOWER_M3_PER_HOUR, blowerFt3PerMin * 60 * FT3_M3, RateKey.PURGE_LEAST_HOURS, leastMin / 60));

        VaultNeeds needs = assessor.assess(ofVolume("vault", volumeFt3 * FT3_M3), List.of());

        assertEquals(expectedMin, needs.purgeMinutes().orElseThrow(), 1e-9);
    }

    /** With the rates as shipped, whatever the volume. */
    @Test
    void noVaultThatIsEnteredIsPurgedForLessThanTenMinutes() {
        for (double volumeM3 : new double[] {0.1, 4, 13.6, 30, 200}) {
            for (String kind : List.of("", "vault", "maintenance hole")) {
                double minutes = SHIPPED.assess(ofVolume(kind, volumeM3), List.of())
                        .purgeMinutes()
                        .orElseThrow();
                assertTrue(minutes >= 10, kind + " of " + volumeM3 + " m3: " + minutes);
            }
        }
        assertEquals(
                OptionalDouble.empty(),
                SHIPPED.assess(ofVolume("handhole", 0.6), List.of()).purgeMinutes());
    }

    /** Nothing recorded: nothing is assumed; what is done at every vault that may be entered stands all the same. */
    @Test
    void whatIsNotRecordedStaysUnknown() {
        VaultNeeds needs = SHIPPED.assess(vault("", VaultSite.UNKNOWN, Answer.UNKNOWN), List.of());

        assertEquals(Answer.UNKNOWN, needs.entered());
        assertEquals(OptionalDouble.empty(), needs.purgeMinutes());
        assertEquals(Answer.UNKNOWN, needs.airSupply());
        assertEquals(List.of(AirSupplyReason.SURFACE_NOT_RECORDED), needs.airSupplyReasons());
        assertEquals(Answer.UNKNOWN, needs.pumped());
        assertEquals(Answer.UNKNOWN, needs.inRoadway());
        assertEquals(List.of(AirTest.values()), needs.airTests());
    }

    /** 29 CFR 1910.268(o)(2)(ii): a part of the right of way open to vehicular traffic, or gas. */
    @ParameterizedTest(name = "{0}, ''{1}'', gas {2}: {3}")
    @CsvSource({
        "vault, roadway, NO, YES, ROADWAY",
        "vault, asphalt, UNKNOWN, YES, ROADWAY",
        "vault, Roadway, YES, YES, ROADWAY;GAS_FOUND",
        "vault, sidewalk, YES, YES, GAS_FOUND",
        "vault, '', YES, YES, GAS_FOUND",
        "vault, sidewalk, NO, NO, OFF_ROADWAY_WITHOUT_GAS",
        "vault, verge, UNKNOWN, UNKNOWN, GAS_NOT_RECORDED",
        "vault, '', NO, UNKNOWN, SURFACE_NOT_RECORDED",
        "vault, no such word, UNKNOWN, UNKNOWN, SURFACE_NOT_RECORDED",
        "'', roadway, UNKNOWN, YES, ROADWAY",
        "handhole, roadway, YES, NO, NOT_ENTERED",
    })
    void airIsSuppliedInTrafficAndWhereGasWasFound(
            String kind, String surface, Answer gas, Answer expected, String reasons) {
        var site = new VaultSite(OptionalDouble.empty(), Answer.UNKNOWN, surface, Answer.UNKNOWN);

        VaultNeeds needs = SHIPPED.assess(vault(kind, site, gas), List.of());

        assertEquals(expected, needs.airSupply());
        assertEquals(
                Stream.of(reasons.split(";", -1)).map(AirSupplyReason::valueOf).toList(), needs.airSupplyReasons());
    }

    @ParameterizedTest(name = "{0}, water {1}, ''{2}''")
    @CsvSource({
        "vault, YES, roadway, YES, YES, YES",
        "vault, NO, sidewalk, YES, NO, NO",
        "handhole, YES, verge, NO, YES, NO",
        "'', UNKNOWN, '', UNKNOWN, UNKNOWN, UNKNOWN",
    })
    void permitsFollowFromKindWaterAndSurface(
            String kind, Answer water, String surface, Answer entered, Answer pumped, Answer inRoadway) {
        var site = new VaultSite(OptionalDouble.empty(), water, surface, Answer.UNKNOWN);

        VaultNeeds needs = SHIPPED.assess(vault(kind, site, Answer.UNKNOWN), List.of());

        assertEquals(entered, needs.entered());
        assertEquals(pumped, needs.pumped());
        assertEquals(inRoadway, needs.inRoadway());
    }

    /** UFC 3-560-01 (2006) 11-6.3.4.1: at most 8 h; only a record of no water leaves out the test after pumping. */
    @Test
    void airIsTestedAtTheStandardsPlacesAndAgain() {
        var dry = new VaultSite(OptionalDouble.empty(), Answer.NO, "", Answer.UNKNOWN);
        VaultNeeds needs = SHIPPED.assess(vault("vault", dry, Answer.NO), List.of());

        assertEquals(List.of(AirTest.BEFORE_ENTRY, AirTest.EACH_DUCT_MOUTH, AirTest.CONTINUOUSLY), needs.airTests());
        assertEquals(8, needs.airRetestHours().orElseThrow());
        assertEquals(
                List.of(), SHIPPED.assess(ofVolume("pull box", 1), List.of()).airTests());
        assertEquals(
                2,
                assessor(Map.of(RateKey.AIR_RETEST_HOURS, 2.0))
                        .assess(vault("vault", dry, Answer.NO), List.of())
                        .airRetestHours()
                        .orElseThrow());
    }
}
