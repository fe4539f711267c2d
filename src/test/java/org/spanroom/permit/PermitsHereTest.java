package org.spanroom.permit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.spanroom.permit.GridMap.box;
import static org.spanroom.permit.GridMap.zone;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.permit.PermitSettings;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.WorkPermits;
import org.spanroom.model.permit.Zone;

/**
 * Which permits a span needs in addition to those that every recovery needs: over every set of those, with permits that vaults and zones
 * name too, and every combination of vaults and zones.
 */
class PermitsHereTest {
    /** One that nothing else names, two that vaults name, two that zones name. */
    private static final List<String> KEYS =
            List.of("road_opening", "curb_space", "confined_space_entry", "night_work", "event_clearance");

    private static final List<Zone> ZONES = List.of(
            zone("N", "night_only", box(-10, -10, 30, 10)),
            zone("E", "event", box(90, -10, 110, 10)),
            zone("A", "night_only", box(40, -10, 60, 10)),
            zone("Z", "rail", box(500, 500, 600, 600)));

    /** Every set of the keys, the empty one first. */
    static List<Set<String>> everywhere() {
        return subsets(KEYS).stream().<Set<String>>map(TreeSet::new).toList();
    }

    private static <T> List<List<T>> subsets(List<T> all) {
        return IntStream.range(0, 1 << all.size())
                .mapToObj(bits -> IntStream.range(0, all.size())
                        .filter(bit -> (bits >> bit & 1) == 1)
                        .mapToObj(all::get)
                        .toList())
                .toList();
    }

    private static PermitSettings settings(Collection<String> everywhere) {
        PermitSettings shipped = ShippedConfig.get().permit();
        WorkPermits work = shipped.everywhere();
        return new PermitSettings(
                "2027-01-15",
                false,
                false,
                0.5,
                0,
                new WorkPermits(
                        List.copyOf(everywhere),
                        work.recoveryAtVaultRoadway(),
                        work.recoveryAtVaultOffRoadway(),
                        work.recoveryEntered(),
                        work.recoveryPumped(),
                        work.newBuild(),
                        work.newBuildAtVaultRoadway(),
                        work.newBuildAtVaultOffRoadway(),
                        work.newBuildEntered(),
                        work.newBuildPumped(),
                        work.recoveryLeadDays(),
                        work.newBuildLeadDays()),
                shipped.kinds(),
                shipped.issuedByCrew());
    }

    private static List<Span> spans() {
        var spans = new ArrayList<Span>();
        for (String kind : List.of("maintenance hole", "handhole")) {
            for (String surface : List.of("roadway", "sidewalk")) {
                for (Answer water : List.of(Answer.YES, Answer.NO)) {
                    var site = new VaultSite(OptionalDouble.empty(), water, surface, Answer.UNKNOWN);
                    Vault from = GridMap.vault("A", 0, 0, kind, site);
                    Vault to = GridMap.vault("B", 100, 0, "handhole", VaultSite.UNKNOWN);
                    spans.add(GridMap.span(100, from, to, 0, 0, 100, 0));
                }
            }
        }
        return spans;
    }

    /** What only this span needs and what all need together are what it needs; it lists nothing that all need. */
    @ParameterizedTest
    @MethodSource("everywhere")
    void whatIsNeededHereAndEverywhereIsAllThatIsNeeded(Set<String> everywhere) {
        for (List<Zone> zones : subsets(ZONES)) {
            if (zones.isEmpty()) {
                continue;
            }
            PermitAssessor assessor = GridMap.assessor(zones, settings(everywhere));
            PermitAssessor noneEverywhere = GridMap.assessor(zones, settings(Set.of()));
            for (Span span : spans()) {
                Permits found = assessor.assess(span);
                Permits plain = noneEverywhere.assess(span);
                var here = new TreeSet<>(plain.recoveryNeeds());
                here.removeAll(everywhere);
                var all = new TreeSet<>(plain.recoveryNeeds());
                all.addAll(everywhere);

                assertThat(plain.recoveryNeedsHere()).isEqualTo(plain.recoveryNeeds());
                assertThat(found.recoveryNeedsHere()).containsExactlyElementsOf(here);
                assertThat(found.recoveryNeeds()).containsExactlyElementsOf(all);
                assertThat(found.recoveryLeadDays()).isEqualTo(plain.recoveryLeadDays());
            }
        }
    }

    /** By hand: a handhole beside the roadway in a zone of night work, and one of unknown surface at an event. */
    @Test
    void permitsOfVaultsAndZonesCountHereUnlessTheyAreNeededEverywhere() {
        Span span = spans().stream()
                .filter(one -> one.from().kind().equals("handhole")
                        && one.from().site().surface().equals("sidewalk")
                        && one.from().site().water() == Answer.NO)
                .findFirst()
                .orElseThrow();

        Permits found = GridMap.assessor(ZONES, settings(Set.of("night_work", "road_opening", "lane_closure")))
                .assess(span);

        assertThat(found.recoveryNeedsHere()).containsExactly("curb_space", "event_clearance");
        assertThat(found.recoveryNeeds())
                .containsExactly("curb_space", "event_clearance", "lane_closure", "night_work", "road_opening");
        assertThat(found.touches())
                .anySatisfy(touch -> assertThat(touch.recoveryNeeds()).containsExactly("night_work"));
    }

    @Test
    void withoutZonesNothingIsNeededHere() {
        Permits found = GridMap.assessor(List.of(), settings(KEYS)).assess(spans().get(0));

        assertThat(found.recoveryNeedsHere()).isEmpty();
        assertThat(found.recoveryNeeds()).isEmpty();
    }
}
