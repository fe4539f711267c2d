package org.spanroom.permit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.permit.PermitSettings;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.WorkPermits;
import org.spanroom.model.permit.Zone;

/** Which permits follow from the two vaults of a span, over all kinds, surfaces and water of both. */
class VaultPermitsTest {
    private static final List<String> NOT_ENTERED = List.of("handhole", "Pull Box");
    private static final List<String> KINDS = List.of("", "maintenance hole", "no such kind", "handhole", "Pull Box");
    private static final List<String> OFF_ROADWAY = List.of("sidewalk", "Footway", "verge", "grass");
    private static final List<String> SURFACES =
            List.of("", "roadway", "asphalt", "no such word", "sidewalk", "Footway", "verge", "grass");

    private static final List<Zone> FAR_AWAY = List.of(GridMap.zone("Z", "rail", GridMap.box(500, 500, 600, 600)));

    /** What is recorded of one vault. */
    private record Recorded(String kind, String surface, Answer water) {}

    private static final Recorded ROADSIDE = new Recorded("handhole", "sidewalk", Answer.NO);

    private static List<Recorded> allVaults() {
        var all = new ArrayList<Recorded>();
        for (String kind : KINDS) {
            for (String surface : SURFACES) {
                for (Answer water : Answer.values()) {
                    all.add(new Recorded(kind, surface, water));
                }
            }
        }
        return all;
    }

    private static Span span(Recorded from, Recorded to, boolean flooded) {
        return GridMap.span(
                GridMap.duct(flooded),
                100,
                GridMap.vault("A", 0, 0, from.kind(), site(from)),
                GridMap.vault("B", 100, 0, to.kind(), site(to)),
                0,
                0,
                100,
                0);
    }

    private static VaultSite site(Recorded vault) {
        return new VaultSite(OptionalDouble.empty(), vault.water(), vault.surface(), Answer.UNKNOWN);
    }

    /**
     * A permit that the crew issues itself is needed and not applied for, so it has no lead time. In the US the entry supervisor of the
     * employer signs the permit to enter a confined space: 29 CFR 1910.146(e)(2) and (f)(6), from memory.
     */
    @Test
    void whatTheCrewIssuesIsNotAppliedFor() {
        PermitSettings shipped = ShippedConfig.get().permit();
        Span entered = span(new Recorded("maintenance hole", "sidewalk", Answer.NO), ROADSIDE, false);
        Permits found = GridMap.assessor(FAR_AWAY, shipped).assess(entered);

        assertThat(found.recoveryNeeds()).containsExactly("confined_space_entry", "curb_space", "traffic_control");
        assertThat(found.recoveryAppliedFor()).containsExactly("curb_space", "traffic_control");
        assertThat(found.recoveryIssuedByCrew()).containsExactly("confined_space_entry");
        assertThat(found.recoveryLeadDays()).isEqualTo(5);

        Permits own = GridMap.assessor(
                        FAR_AWAY, crewIssues(shipped, List.of("confined_space_entry", "curb_space", "traffic_control")))
                .assess(entered);
        assertThat(own.recoveryNeeds()).isEqualTo(found.recoveryNeeds());
        assertThat(own.recoveryAppliedFor()).isEmpty();
        assertThat(own.recoveryLeadDays()).isZero();

        Permits none =
                GridMap.assessor(FAR_AWAY, crewIssues(shipped, List.of())).assess(entered);
        assertThat(none.recoveryAppliedFor()).isEqualTo(found.recoveryNeeds());
        assertThat(none.recoveryIssuedByCrew()).isEmpty();
    }

    private static PermitSettings crewIssues(PermitSettings shipped, List<String> keys) {
        return new PermitSettings(
                shipped.onDate(),
                shipped.expiredCount(),
                shipped.toComeCount(),
                shipped.sliverM(),
                shipped.zoneToleranceM(),
                shipped.everywhere(),
                shipped.kinds(),
                keys);
    }

    @Test
    void recoveryAndNewBuildNeedWhatTheVaultsAreLike() {
        PermitAssessor assessor = GridMap.assessor(FAR_AWAY, ShippedConfig.get().permit());
        for (Recorded from : allVaults()) {
            for (Recorded to : allVaults()) {
                for (boolean flooded : new boolean[] {false, true}) {
                    Permits found = assessor.assess(span(from, to, flooded));
                    Set<String> recovery = recovery(List.of(from, to), flooded);
                    Set<String> build = newBuild(List.of(from, to));
                    build.removeAll(recovery);

                    assertThat(found.recoveryNeeds())
                            .as("%s, %s, flooded %s", from, to, flooded)
                            .containsExactlyElementsOf(recovery);
                    assertThat(found.avoided())
                            .as("%s, %s, flooded %s", from, to, flooded)
                            .containsExactlyElementsOf(build);
                }
            }
        }
    }

    private static Set<String> recovery(List<Recorded> vaults, boolean flooded) {
        var needs = new TreeSet<>(List.of("traffic_control"));
        for (Recorded vault : vaults) {
            needs.add(OFF_ROADWAY.contains(vault.surface()) ? "curb_space" : "lane_closure");
            addAtVault(vault, needs);
        }
        if (flooded) {
            needs.add("water_discharge");
        }
        return needs;
    }

    private static Set<String> newBuild(List<Recorded> vaults) {
        var needs = new TreeSet<>(List.of("traffic_control", "lane_closure", "street_cut", "restoration"));
        vaults.forEach(vault -> addAtVault(vault, needs));
        return needs;
    }

    private static void addAtVault(Recorded vault, Set<String> needs) {
        if (!NOT_ENTERED.contains(vault.kind())) {
            needs.add("confined_space_entry");
        }
        if (vault.water() == Answer.YES) {
            needs.add("water_discharge");
        }
    }

    /** Each list of the settings is requested under its condition and no other. */
    @Test
    void everyListOfTheSettingsHasItsCondition() {
        var lists = new WorkPermits(
                List.of("r"),
                List.of("r_road"),
                List.of("r_off"),
                List.of("r_in"),
                List.of("r_wet"),
                List.of("b"),
                List.of("b_road"),
                List.of("b_off"),
                List.of("b_in"),
                List.of("b_wet"),
                1,
                2);
        for (int bits = 0; bits < 32; bits++) {
            var site = new WorkPermits.Site(
                    (bits & 1) != 0, (bits & 2) != 0, (bits & 4) != 0, (bits & 8) != 0, (bits & 16) != 0);
            assertThat(lists.forRecovery(site)).containsExactlyElementsOf(expected("r", site, site.ductPumped()));
            assertThat(lists.forNewBuild(site)).containsExactlyElementsOf(expected("b", site, false));
        }
    }

    private static List<String> expected(String work, WorkPermits.Site site, boolean ductPumped) {
        var needs = new ArrayList<>(List.of(work));
        if (site.inRoadway()) {
            needs.add(work + "_road");
        }
        if (site.offRoadway()) {
            needs.add(work + "_off");
        }
        if (site.entered()) {
            needs.add(work + "_in");
        }
        if (site.vaultPumped() || ductPumped) {
            needs.add(work + "_wet");
        }
        return needs;
    }

    /** A zone adds to what the vaults ask for, and takes nothing away. */
    @Test
    void zonesAddToWhatTheVaultsNeed() {
        var handhole = new Recorded("handhole", "verge", Answer.NO);
        Zone rail = GridMap.zone("R", "rail", GridMap.box(-5, -5, 5, 5));

        Permits permits =
                GridMap.assessor(List.of(rail), ShippedConfig.get().permit()).assess(span(handhole, handhole, false));

        assertThat(permits.recoveryNeeds()).containsExactly("curb_space", "track_access", "traffic_control");
        assertThat(permits.avoided()).containsExactly("lane_closure", "rail_crossing", "restoration", "street_cut");
    }
}
