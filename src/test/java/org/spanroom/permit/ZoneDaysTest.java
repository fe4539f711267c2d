package org.spanroom.permit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.network.Span;
import org.spanroom.model.permit.PermitSettings;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.permit.ZoneRule;

/** A zone counts from its first day to its last, both included; before, it is listed as upcoming. */
class ZoneDaysTest {
    private static final Span SPAN = GridMap.span(0, 0, 100, 0);

    private static PermitSettings settings(String onDate, boolean expiredCount, boolean toComeCount) {
        PermitSettings shipped = ShippedConfig.get().permit();
        return new PermitSettings(
                onDate,
                expiredCount,
                toComeCount,
                0.5,
                0,
                shipped.everywhere(),
                shipped.kinds(),
                shipped.issuedByCrew());
    }

    @ParameterizedTest(name = "{0} to {1} on {2}, expired count {3}, to come count {4}: {5}")
    @CsvSource({
        "2027-03-01, 2027-03-31, 2027-02-28, false, false, to come",
        "2027-03-01, 2027-03-31, 2027-03-01, false, false, counts",
        "2027-03-01, 2027-03-31, 2027-03-15, false, false, counts",
        "2027-03-01, 2027-03-31, 2027-03-31, false, false, counts",
        "2027-03-01, 2027-03-31, 2027-04-01, false, false, over",
        "2027-03-01, 2027-03-01, 2027-03-01, false, false, counts",
        "2027-03-01, , 2027-02-28, false, false, to come",
        "2027-03-01, , 2099-01-01, false, false, counts",
        ", 2027-03-31, 1999-01-01, false, false, counts",
        ", 2027-03-31, 2027-04-01, false, false, over",
        ", , 2027-04-01, false, false, counts",
        "2027-03-01, 2027-03-31, 2027-02-28, false, true, counts",
        "2027-03-01, 2027-03-31, 2027-02-28, true, false, to come",
        "2027-03-01, 2027-03-31, 2027-04-01, true, false, counts",
        "2027-03-01, 2027-03-31, 2027-04-01, false, true, over",
        "2027-03-01, 2027-03-31, , false, false, counts"
    })
    void aZoneCountsFromItsFirstDayToItsLast(
            String from, String until, String onDate, boolean expiredCount, boolean toComeCount, String expected) {
        Zone zone = GridMap.zone("C", "cut_ban", text(from), text(until), GridMap.box(-10, -10, 50, 10));
        PermitAssessor assessor = GridMap.assessor(List.of(zone), settings(text(onDate), expiredCount, toComeCount));

        Permits permits = assessor.assess(SPAN);

        boolean counts = expected.equals("counts");
        assertThat(permits.touches()).hasSize(counts ? 1 : 0);
        assertThat(permits.toCome()).hasSize(expected.equals("to come") ? 1 : 0);
        assertThat(permits.isUnder(ZoneRule.CUT_BAN)).isEqualTo(counts);
        assertThat(permits.avoided().contains("ban_exception")).isEqualTo(counts);
        assertThat(permits.newBuildLeadDays()).isEqualTo(counts ? 90 : 60);
        assertThat(permits.lengthM() > 0).isEqualTo(counts);
        assertThat(assessor.zonesAt(SPAN.from())).hasSize(counts ? 1 : 0);
    }

    private static String text(String day) {
        return day == null ? "" : day;
    }

    /** Planned works of others: coordination while they last, and no ban on a new build, since the street is open. */
    @ParameterizedTest(name = "on {0}: {1}")
    @CsvSource({"2027-02-28, false", "2027-03-01, true", "2027-03-31, true", "2027-04-01, false"})
    void plannedStreetWorksAskForCoordinationWhileTheyLast(String onDate, boolean ask) {
        Zone works = GridMap.zone("W", "street_works", "2027-03-01", "2027-03-31", GridMap.box(-10, -10, 50, 10));
        PermitSettings shipped = settings(onDate, false, false);

        Permits permits = GridMap.assessor(List.of(works), shipped).assess(SPAN);

        assertThat(permits.recoveryNeeds().contains("works_coordination")).isEqualTo(ask);
        assertThat(permits.isUnder(ZoneRule.CUT_BAN)).isFalse();
        assertThat(shipped.kindByWord()).containsEntry("planned works", "street_works");
        assertThat(shipped.kind("street_works").newBuild()).containsExactly("works_coordination");
    }
}
