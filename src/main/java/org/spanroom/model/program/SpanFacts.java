package org.spanroom.model.program;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.Line;

/**
 * What a program needs to know of a span that can be recovered, in addition to what its duct offers.
 *
 * @param spanId its name
 * @param rank its rank in the run; empty for an excluded one
 * @param reasons keys of the gates that exclude it
 * @param vaultA name of the vault where its line begins
 * @param vaultB name of the vault where it ends
 * @param lengthM its length
 * @param positionsGained positions that recovery adds
 * @param isNight whether it has to be done by night
 * @param sharedAHours hours saved if work next to it at vault A is done in the same shift
 * @param sharedBHours the same of vault B
 * @param siteHourMoney cost of an hour on site
 * @param savingMoney what recovery saves over new build
 * @param innerductKg mass of the innerduct that comes out
 * @param trenchAvoidedM open trench avoided
 * @param boreAvoidedM boring avoided
 * @param co2eKg emissions of new-build materials avoided, by ICE
 * @param co2eDigKg the part of it that a trench emits once, however many ducts lie in it
 * @param circuitsAtRisk circuits on its cables, where recorded
 * @param permits permits that are to be applied for, in addition to those that recovery needs everywhere
 * @param crewPermits permits that the crew's own entry supervisor issues on the day of work
 * @param zoneKinds kinds of the zones that it touches
 * @param zoneDays kinds and days of the zones with dates that one of its vaults is in
 * @param groups its values in the columns that totals are asked for
 * @param district its district; empty where none is asked for or recorded
 * @param fieldCheck what to look at before the work; empty where no check is listed
 * @param lonLat its line, where it is recorded
 */
public record SpanFacts(
        String spanId,
        OptionalInt rank,
        List<String> reasons,
        String vaultA,
        String vaultB,
        double lengthM,
        int positionsGained,
        boolean isNight,
        double sharedAHours,
        double sharedBHours,
        double siteHourMoney,
        double savingMoney,
        double innerductKg,
        double trenchAvoidedM,
        double boreAvoidedM,
        double co2eKg,
        double co2eDigKg,
        OptionalInt circuitsAtRisk,
        List<String> permits,
        List<String> crewPermits,
        List<String> zoneKinds,
        List<ZoneDays> zoneDays,
        Map<String, String> groups,
        String district,
        String fieldCheck,
        Optional<Line> lonLat) {
    private static final String EMBARGO = "embargo";

    public SpanFacts {
        reasons = List.copyOf(reasons);
        permits = List.copyOf(permits);
        crewPermits = List.copyOf(crewPermits);
        zoneKinds = List.copyOf(zoneKinds);
        zoneDays = List.copyOf(zoneDays);
        groups = Map.copyOf(groups);
    }

    /**
     * The days of a zone.
     *
     * @param kind key of its kind
     */
    public record ZoneDays(String kind, Closure days) {}

    /** Returns whether its recovery is worth something by itself: it is ranked, or only an embargo excludes it. */
    public boolean isWorthBySelf() {
        return reasons.stream().allMatch(EMBARGO::equals);
    }
}
