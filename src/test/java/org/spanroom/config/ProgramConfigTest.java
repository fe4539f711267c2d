package org.spanroom.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.finding.InputException;
import org.spanroom.model.program.CrewTeam;

/** The config of an annual program: what it leaves out is shipped, and what is wrong is named with its line. */
class ProgramConfigTest {
    @TempDir
    private Path folder;

    private ProgramConfig read(String text) throws IOException {
        return ProgramConfigReader.read(Files.writeString(folder.resolve("p.yaml"), text));
    }

    @Test
    void whatIsLeftOutIsShipped() throws IOException {
        ProgramConfig shipped = ProgramConfigReader.shipped();

        assertThat(read("")).isEqualTo(shipped);
        assertThat(ProgramConfigReader.read(Path.of("config", "program.yaml"))).isEqualTo(shipped);
        assertThat(shipped.years()).hasSize(3);
        assertThat(read("later_year_ratio: 0.5").laterYearRatio()).isEqualTo(0.5);
        assertThat(read("later_year_ratio: 0.5").crews()).isEqualTo(shipped.crews());
    }

    @Test
    void aYearWithoutALimitHasNone() throws IOException {
        ProgramConfig config = read("years:\n  - {money: 100}\n  - {money: , crew_hours: 40}\n");

        assertThat(config.years())
                .containsExactly(
                        new ProgramConfig.YearLimits(OptionalDouble.of(100), OptionalDouble.empty()),
                        new ProgramConfig.YearLimits(OptionalDouble.empty(), OptionalDouble.of(40)));
    }

    @Test
    void crewsAndDaysAreRead() throws IOException {
        ProgramConfig config = read("""
                first_day: 2027-02-01
                crews:
                  - {name: A, shifts_per_week: 5, shift_hours: 8, shifts: nights}
                stop_windows:
                  - {name: fair, from: 2027-05-01, until: 2027-05-09, zone_kinds: [event]}
                """);

        assertThat(config.findFirstDay()).contains(LocalDate.of(2027, 2, 1));
        assertThat(config.crews()).containsExactly(new CrewTeam("A", 5, 8, CrewTeam.Shifts.NIGHTS));
        assertThat(config.stopWindows().get(0).zoneKinds()).containsExactly("event");
    }

    @Test
    void filesAreNamedFromTheConfigsOwnFolder() throws IOException {
        ProgramConfig config = read("connections: wanted.csv\nprevious: old/program.csv\n");

        assertThat(config.connections()).contains(folder.resolve("wanted.csv"));
        assertThat(config.previous()).contains(folder.resolve("old").resolve("program.csv"));
    }

    @Test
    void theFirstAndTheLastDayOfTheYearsAreDays() throws IOException {
        assertThat(read("first_day: 1900-01-01").findFirstDay()).contains(LocalDate.of(1900, 1, 1));
        assertThat(read("first_day: 2200-12-31").findFirstDay()).contains(LocalDate.of(2200, 12, 31));
    }

    @Test
    void withoutACrewLimitTheHoursFollowTheCrews() throws IOException {
        ProgramConfig config = read("years: [{money: 7, crew_hours: 9}]")
                .withCrews(List.of(new CrewTeam("B", 1, 8, CrewTeam.Shifts.DAYS)));

        assertThat(config.crews()).hasSize(1);
        assertThat(config.years().get(0).money()).hasValue(7);
        assertThat(config.years().get(0).crewHours()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "yaers: []|line 1: unknown key 'yaers'",
                "years: []|years must have from 1 to 20 rows, has 0",
                "years: [{money: -1}]|money must",
                "years: [{mony: 1}]|unknown key 'mony'",
                "first_day: 4.1.2027|first_day must be a date in the form 2027-03-31, in the years 1900 to 2200, was '4.1.2027'",
                "first_day: +999999999-12-31|in the years 1900 to 2200, was '+999999999-12-31'",
                "first_day: 2201-01-01|in the years 1900 to 2200, was '2201-01-01'",
                "first_day: 1899-12-31|in the years 1900 to 2200, was '1899-12-31'",
                "'stop_windows: [{name: w, from: 2027-02-01, until: +999999999-12-31}]'|in the years 1900 to 2200, like from",
                "'change_freezes: [{name: w, from: -0001-02-01, until: 2027-02-02, least_circuits: 4}]'|in the years 1900 to 2200",
                "crews: []|crews must name at least one crew",
                "crews: [{name: A, shifts_per_week: 8, shift_hours: 7, shifts: days}]|shifts_per_week must be from 1 to 7",
                "crews: [{name: A, shifts_per_week: 4, shift_hours: 7, shifts: dawn}]|'dawn' is not a valid value for shifts",
                "'stop_windows: [{name: w, from: 31-12, until: 01-31}]'|from must be a month and day such as 12-15, or a date",
                "'stop_windows: [{name: w, from: 12-15, until: 2027-01-31}]'|until must be a month and day",
                "'stop_windows: [{name: w, from: 2027-02-01, until: 2027-01-31}]'|until must not be before from",
                "'change_freezes: [{name: , from: 12-15, until: 01-31, least_circuits: 4}]'|name",
                "'must: [a]\nmust_not: [a]'|must and must_not both name a",
                "later_year_ratio: 1.5|later_year_ratio must",
                "notice_days: -1|notice_days must be from 0 to 10000, is",
                "budget_cost: guess|'guess' is not a valid value for budget_cost",
                "'most_in_work: {Harbor: -1}'|most_in_work.Harbor must be from 0 to 1000000, is",
                "'most_in_work: {Harbor: 1}'|most_in_work needs district",
            })
    void whatIsWrongIsNamedInOneLine(String text, String message) {
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("p.yaml")
                .hasMessageContaining(message)
                .hasMessageNotContaining("\n");
    }
}
