package org.spanroom.effort;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.spanroom.model.Answer;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateRows;
import org.spanroom.model.effort.RateSettings;
import org.spanroom.model.effort.Rates;
import org.spanroom.model.effort.VaultAccess;
import org.spanroom.model.network.AirSupplyReason;
import org.spanroom.model.network.AirTest;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultKind;
import org.spanroom.model.network.VaultNeeds;
import org.spanroom.model.permit.Zone;

/**
 * Finds what a crew prepares for at a vault: ventilating, air tests, a continuous supply of air, pumping, traffic, entry. Each answer follows
 * from what is recorded; where the records do not decide it, it is unknown. Safe for use by several threads.
 *
 * <p>A vault of which the kind is not recorded is ventilated and tested as one that is entered. A continuous supply of air is needed in a
 * part of a public right of way that is open to vehicular traffic, and where gas was found: 29 CFR 1910.268(o)(2)(ii). What the test
 * before entry shows overrides the record.
 */
public final class VaultAssessor {
    private static final int MINUTES_PER_HOUR = 60;

    private final Rates rates;
    private final Account account;
    private final VaultAccess access;

    /** Few kinds meet in one network, so that the vaults share these. */
    private final Map<String, RateRows> rowsByKinds = new ConcurrentHashMap<>();

    /** @param vaultKinds what each recorded kind of vault means for the work there */
    public VaultAssessor(RateSettings settings, Map<String, VaultKind> vaultKinds) {
        this.rates = Rates.of(settings);
        this.account = Account.silent(rates);
        this.access = new VaultAccess(vaultKinds, settings);
    }

    /** Returns what a crew prepares for at a vault in these permit zones. */
    public VaultNeeds assess(Vault vault, List<Zone> zones) {
        Answer entered = access.entered(vault);
        Answer inRoadway = access.inRoadway(vault);
        Answer water = vault.site().water();
        if (entered == Answer.NO) {
            return new VaultNeeds(
                    entered,
                    OptionalDouble.empty(),
                    List.of(),
                    OptionalDouble.empty(),
                    Answer.NO,
                    List.of(AirSupplyReason.NOT_ENTERED),
                    water,
                    inRoadway);
        }
        RateRows rows = rows(vault.kind(), zones);
        List<AirSupplyReason> reasons =
                airSupplyReasons(inRoadway, vault.facts().gasFound());
        return new VaultNeeds(
                entered,
                purgeMinutes(vault, rows),
                airTests(water),
                OptionalDouble.of(account.rate(RateKey.AIR_RETEST_HOURS, rows)),
                airSupply(reasons.get(0)),
                reasons,
                water,
                inRoadway);
    }

    private OptionalDouble purgeMinutes(Vault vault, RateRows rows) {
        OptionalDouble volumeM3 = vault.site().volumeM3();
        return volumeM3.isPresent()
                ? OptionalDouble.of(MINUTES_PER_HOUR
                        * Purge.of(volumeM3.getAsDouble(), account, rows).hours())
                : OptionalDouble.empty();
    }

    /** Water of which nothing is recorded may be there, so that only a record of none leaves the test after pumping out. */
    private static List<AirTest> airTests(Answer water) {
        var tests = new ArrayList<>(List.of(AirTest.values()));
        if (water == Answer.NO) {
            tests.remove(AirTest.AFTER_PUMPING);
        }
        return tests;
    }

    /** Returns all reasons that demand it, else the one why it is not demanded or unknown. */
    private static List<AirSupplyReason> airSupplyReasons(Answer inRoadway, Answer gasFound) {
        var reasons = new ArrayList<AirSupplyReason>();
        if (inRoadway == Answer.YES) {
            reasons.add(AirSupplyReason.ROADWAY);
        }
        if (gasFound == Answer.YES) {
            reasons.add(AirSupplyReason.GAS_FOUND);
        }
        if (!reasons.isEmpty()) {
            return reasons;
        }
        if (inRoadway == Answer.UNKNOWN) {
            return List.of(AirSupplyReason.SURFACE_NOT_RECORDED);
        }
        return List.of(
                gasFound == Answer.NO ? AirSupplyReason.OFF_ROADWAY_WITHOUT_GAS : AirSupplyReason.GAS_NOT_RECORDED);
    }

    private static Answer airSupply(AirSupplyReason first) {
        return switch (first) {
            case ROADWAY, GAS_FOUND -> Answer.YES;
            case OFF_ROADWAY_WITHOUT_GAS, NOT_ENTERED -> Answer.NO;
            case SURFACE_NOT_RECORDED, GAS_NOT_RECORDED -> Answer.UNKNOWN;
        };
    }

    private RateRows rows(String vaultKind, List<Zone> zones) {
        Set<String> zoneKinds = new TreeSet<>();
        zones.forEach(zone -> zoneKinds.add(zone.kind()));
        String kinds = vaultKind + '\n' + String.join("\n", zoneKinds);
        return rowsByKinds.computeIfAbsent(kinds, key -> rates.rows(zoneKinds, vaultKind));
    }
}
