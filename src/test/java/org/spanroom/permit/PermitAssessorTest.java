package org.spanroom.permit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.permit.GridMap.assessor;
import static org.spanroom.permit.GridMap.box;
import static org.spanroom.permit.GridMap.settings;
import static org.spanroom.permit.GridMap.span;
import static org.spanroom.permit.GridMap.vault;
import static org.spanroom.permit.GridMap.zone;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.spanroom.model.Line;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.RuledPart;
import org.spanroom.model.permit.Stretch;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.permit.ZoneRule;
import org.spanroom.model.permit.ZoneTouch;

/** Cases that can be read off the grid that they are drawn on. */
class PermitAssessorTest {
    private static final Offset<Double> TENTH_MM = within(1e-4);

    private final Span straight = span(0, 0, 100, 0);

    @Test
    void metersInsideAreThoseBetweenTheCrossings() {
        Permits permits =
                assessor(0.5, zone("Z", "heritage", box(40, -10, 60, 10))).assess(straight);

        ZoneTouch touch = only(permits);
        assertThat(touch.zone().id()).isEqualTo("Z");
        assertThat(touch.lengthM()).isCloseTo(20, TENTH_MM);
        assertThat(touch.stretches()).hasSize(1);
        assertThat(touch.stretches().get(0).fromM()).isCloseTo(40, TENTH_MM);
        assertThat(touch.atVault()).isFalse();
        assertThat(permits.lengthM("heritage")).isCloseTo(20, TENTH_MM);
        assertThat(permits.lengthM("rail")).isZero();
    }

    @Test
    void stretchesGoOverVerticesAndHolesAreOutside() {
        Span bent = span(0, 0, 50, 0, 50, 50);
        Zone holed = zone("Z", "school", box(20, -10, 60, 40), box(30, -5, 40, 5));

        ZoneTouch touch = only(assessor(0.5, holed).assess(bent));

        assertThat(touch.lengthM()).isCloseTo(10 + 10 + 40, TENTH_MM);
        assertThat(touch.stretches()).hasSize(2);
        assertThat(touch.stretches().get(1).fromM()).isCloseTo(40, TENTH_MM);
        assertThat(touch.stretches().get(1).toM()).isCloseTo(90, TENTH_MM);
    }

    @Test
    void aZoneAroundEverythingHoldsTheWholeLength() {
        ZoneTouch touch = only(
                assessor(0.5, zone("Z", "event", box(-50, -50, 150, 50))).assess(span(0, 0, 33, 1, 70, -2, 100, 0)));

        assertThat(touch.stretches()).hasSize(1);
        assertThat(touch.atFrom() && touch.atTo()).isTrue();
        assertThat(touch.lengthM()).isEqualTo(span(0, 0, 33, 1, 70, -2, 100, 0).lengthM(), within(1e-9));
    }

    /** The duct is in the drawn place, but the length that counts may be the recorded one. */
    @Test
    void metersAreOfTheLengthThatCounts() {
        Span recorded = span(250, vault("A", 0, 0), vault("B", 100, 0), 0, 0, 100, 0);

        assertThat(only(assessor(0.5, zone("Z", "rail", box(40, -10, 60, 10))).assess(recorded))
                        .lengthM())
                .isCloseTo(50, TENTH_MM);
    }

    @Test
    void slopedBoundariesCutWhereTheyCross() {
        // The edge from (0, -30) to (100, 30) meets y = 0 at x = 50; the zone is above and left of it.
        Zone wedge = zone("Z", "water", new double[] {0, -30, 100, 30, 0, 30});

        assertThat(only(assessor(0.5, wedge).assess(straight)).lengthM()).isCloseTo(50, TENTH_MM);
    }

    @Test
    void aLineAlongTheBoundaryLiesInTheZone() {
        Zone beside = zone("Z", "cut_ban", box(20, 0, 70, 30));

        assertThat(only(assessor(0.5, beside).assess(straight)).lengthM()).isCloseTo(50, within(5e-4));
    }

    @Test
    void aZoneTouchedInOnePointIsNotTouched() {
        Zone corner = zone("Z", "cut_ban", new double[] {50, 0, 60, 30, 40, 30});

        assertThat(assessor(0, corner).assess(straight).touches()).isEmpty();
    }

    @Test
    void sliversDoNotCount() {
        Zone sliver = zone("Z", "cut_ban", box(40, -10, 40.4, 10));

        assertThat(assessor(0.5, sliver).assess(straight).touches()).isEmpty();
        assertThat(only(assessor(0.3, sliver).assess(straight)).lengthM()).isCloseTo(0.4, TENTH_MM);
    }

    @Test
    void aVaultBesideTheLineBringsItsZoneIn() {
        Span offset = span(100, vault("A", -3, 4), vault("B", 100, 0), 0, 0, 100, 0);

        Permits permits =
                assessor(0.5, zone("Z", "night_only", box(-10, 2, -1, 9))).assess(offset);

        ZoneTouch touch = only(permits);
        assertThat(touch.lengthM()).isZero();
        assertThat(touch.atFrom()).isTrue();
        assertThat(touch.atTo()).isFalse();
        assertThat(permits.isUnder(ZoneRule.NIGHT_ONLY)).isTrue();
        assertThat(permits.recoveryNeeds()).contains("night_work");
    }

    @Test
    void recoveringAsksLessOfAZoneThatOnlyTheDuctRunsThrough() {
        Permits permits = assessor(
                        0.5,
                        zone("N", "night_only", box(40, -10, 60, 10)),
                        zone("H", "heritage", box(-10, -10, 30, 10)),
                        zone("R", "rail", box(45, -10, 50, 10)))
                .assess(straight);

        assertThat(permits.touches()).extracting(touch -> touch.zone().id()).containsExactly("H", "N", "R");
        assertThat(permits.isUnder(ZoneRule.NIGHT_ONLY)).isFalse();
        assertThat(permits.recoveryNeeds()).containsExactly("confined_space_entry", "lane_closure", "traffic_control");
        assertThat(permits.avoided())
                .containsExactly(
                        "archaeology_watch",
                        "heritage_review",
                        "night_work",
                        "rail_crossing",
                        "restoration",
                        "street_cut");
        assertThat(permits.recoveryLeadDays()).isEqualTo(5);
        assertThat(permits.newBuildLeadDays()).isEqualTo(120);
    }

    @Test
    void whatBothNeedIsNotAvoided() {
        Permits permits =
                assessor(0.5, zone("E", "event", box(-10, -10, 30, 10))).assess(straight);

        assertThat(permits.recoveryNeeds()).contains("event_clearance");
        assertThat(permits.avoided()).containsExactly("restoration", "street_cut");
        assertThat(permits.recoveryLeadDays()).isEqualTo(10);
    }

    @Test
    void overlappingZonesOfOneKindCountTheirMetersOnce() {
        Permits permits = assessor(
                        0.5,
                        zone("C1", "cut_ban", "2028-06-30", box(10, -10, 50, 10)),
                        zone("C2", "cut_ban", "2029-12-31", box(40, -10, 70, 10)),
                        zone("H", "heritage", box(45, -10, 65, 10)))
                .assess(straight);

        assertThat(permits.touches())
                .extracting(ZoneTouch::lengthM)
                .satisfiesExactly(
                        m -> assertThat(m).isCloseTo(40, TENTH_MM),
                        m -> assertThat(m).isCloseTo(30, TENTH_MM),
                        m -> assertThat(m).isCloseTo(20, TENTH_MM));
        assertThat(permits.lengthM("cut_ban")).isCloseTo(60, TENTH_MM);
        assertThat(banned(permits).lengthM()).isCloseTo(60, TENTH_MM);
        assertThat(permits.lengthM("heritage")).isCloseTo(20, TENTH_MM);
        assertThat(permits.lengthM()).isCloseTo(60, TENTH_MM);
        assertThat(banned(permits).until()).contains(LocalDate.of(2029, 12, 31));
    }

    @Test
    void aBanWithoutALastDayIsForGood() {
        Permits permits = assessor(
                        0.5,
                        zone("C1", "cut_ban", "2028-06-30", box(10, -10, 50, 10)),
                        zone("C2", "cut_ban", box(60, -10, 70, 10)))
                .assess(straight);

        assertThat(banned(permits).until()).isEmpty();
    }

    @Test
    void aZoneCountsOnItsLastDayAndNotOnTheNext() {
        List<Zone> ban = List.of(zone("C", "cut_ban", "2027-01-15", box(10, -10, 50, 10)));

        assertThat(banned(GridMap.assessor(ban, settings("2027-01-15", false, 0.5))
                                .assess(straight))
                        .lengthM())
                .isCloseTo(40, TENTH_MM);
        assertThat(GridMap.assessor(ban, settings("2027-01-16", false, 0.5))
                        .assess(straight)
                        .touches())
                .isEmpty();
        assertThat(banned(GridMap.assessor(ban, settings("2027-01-16", true, 0.5))
                                .assess(straight))
                        .lengthM())
                .isCloseTo(40, TENTH_MM);
    }

    private static RuledPart banned(Permits permits) {
        return permits.findPart(ZoneRule.CUT_BAN).orElseThrow();
    }

    @Test
    void aSpanOutsideAllZonesNeedsWhatWorkNeedsEverywhere() {
        Permits permits =
                assessor(0.5, zone("Z", "rail", box(500, 500, 600, 600))).assess(straight);

        assertThat(permits.touches()).isEmpty();
        assertThat(permits.recoveryNeeds()).containsExactly("confined_space_entry", "lane_closure", "traffic_control");
        assertThat(permits.avoided()).containsExactly("restoration", "street_cut");
    }

    @Test
    void withoutZonesNothingIsSaid() {
        assertThat(assessor(0.5).assess(straight)).isSameAs(Permits.NONE);
    }

    @Test
    void aKindThatTheSettingsDoNotKnowHasTheRulesOfOther() {
        Permits permits =
                assessor(0.5, zone("Z", "parade", box(40, -10, 60, 10))).assess(straight);

        assertThat(permits.recoveryNeeds()).contains("zone_review");
    }

    @Test
    void vaultsOnTheBoundaryLieInTheZone() {
        PermitAssessor assessor = assessor(0.5, zone("Z", "rail", box(40, -10, 60, 10)));

        assertThat(assessor.zonesAt(vault("V", 40, 0))).hasSize(1);
        assertThat(assessor.zonesAt(vault("V", 50, 0))).hasSize(1);
        assertThat(assessor.zonesAt(vault("V", 39.99, 0))).isEmpty();
    }

    @Test
    void zonesAcrossTheHundredAndEightiethMeridianAreFoundFromBothSides() {
        Line shell = Line.ofXy(179.999, 10, 180.001, 10, 180.001, 10.001, 179.999, 10.001, 179.999, 10);
        var zone = new Zone(0, "Z", "water", "", Optional.empty(), List.of(new Zone.Outline(shell, List.of())));
        PermitAssessor assessor = assessor(0.5, zone);

        assertThat(assessor.zonesAt(at(179.9995))).hasSize(1);
        assertThat(assessor.zonesAt(at(-179.9995))).hasSize(1);
        assertThat(assessor.zonesAt(at(-179.9985))).isEmpty();
    }

    @Test
    void stretchesThatMeetBecomeOne() {
        assertThat(Stretch.union(List.of(new Stretch(5, 7), new Stretch(0, 2), new Stretch(2, 3), new Stretch(6, 6.5))))
                .containsExactly(new Stretch(0, 3), new Stretch(5, 7));
    }

    private static Vault at(double lonDeg) {
        return new Vault(0, "V", lonDeg, 10.0005, List.of(), OptionalDouble.empty(), "");
    }

    private static ZoneTouch only(Permits permits) {
        assertThat(permits.touches()).hasSize(1);
        return permits.touches().get(0);
    }
}
