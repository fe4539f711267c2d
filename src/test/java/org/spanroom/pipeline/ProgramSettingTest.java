package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ProgramConfigReader;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.Closure;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.NewDuctOffer;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.model.program.VaultPlace;
import org.spanroom.program.ProgramInputs;

/**
 * What a config makes of the spans of a run: two ducts of one section. The plan is of January 15, 2027; span a costs 1,000, likely 1,100, high 1,300, adds 4
 * positions, works in 3 of 4 draws and needs 5 days of lead.
 */
class ProgramSettingTest {
    private static final LocalDate ON_DATE = LocalDate.of(2027, 1, 15);
    private static final Set<String> NONE = Set.of();

    @TempDir
    private Path folder;

    /** What differs from case to case in the facts of span a. */
    private record Facts(
            List<String> reasons,
            double savingMoney,
            OptionalInt circuits,
            List<String> zoneKinds,
            List<SpanFacts.ZoneDays> zoneDays,
            String fieldCheck) {
        static final Facts PLAIN = new Facts(List.of(), 700, OptionalInt.empty(), List.of(), List.of(), "");
    }

    private static SpanFacts facts(String span, Facts of) {
        return new SpanFacts(
                span,
                OptionalInt.empty(),
                of.reasons,
                "V0",
                "V1",
                50,
                4,
                false,
                0.5,
                0.5,
                100,
                of.savingMoney,
                0,
                0,
                0,
                0,
                0,
                of.circuits,
                List.of(),
                List.of(),
                of.zoneKinds,
                of.zoneDays,
                Map.of(),
                "",
                of.fieldCheck,
                Optional.empty());
    }

    private static DuctOffer duct(String span, Optional<LocalDate> notBefore) {
        var costs = new Costs(1_000, new MoneyRange(800, 1_100, 1_300));
        return new DuctOffer(
                span,
                span,
                1,
                5,
                OptionalInt.empty(),
                "",
                Optional.of(new DuctOffer.Recovery(costs, 2, 5, notBefore, OptionalLong.of(0b0111))));
    }

    private static DuctNetwork network(Optional<LocalDate> notBefore) {
        var section = new SectionOffer(
                "S",
                "S",
                0,
                1,
                50,
                List.of(duct("a", notBefore), duct("b", Optional.empty())),
                new NewDuctOffer(0, Costs.NONE, Costs.NONE, 0),
                Optional.empty());
        return new DuctNetwork(
                List.of(new VaultPlace("V0", -30, 40), new VaultPlace("V1", -30, 40.001)),
                List.of(section),
                4,
                ON_DATE);
    }

    private ProgramSetting setting(String yaml, Facts facts, Set<String> done, Set<String> failed) throws IOException {
        Map<String, SpanFacts> all = new HashMap<>();
        all.put("a", facts("a", facts));
        all.put("b", facts("b", Facts.PLAIN));
        Path file = Files.writeString(folder.resolve("p.yaml"), yaml.replace('~', '\n') + "\n");
        return new ProgramSetting(ProgramConfigReader.read(file), all, network(Optional.empty()), done, failed);
    }

    private ProgramInputs inputs(String yaml, Facts facts) throws IOException {
        return setting(yaml, facts, NONE, NONE).inputs(List.of(), Map.of());
    }

    private static List<String> names(ProgramInputs inputs) {
        return inputs.eligibleSpans().stream()
                .map(span -> span.facts().spanId())
                .toList();
    }

    private EligibleSpan span(String yaml, Facts facts) throws IOException {
        return inputs(yaml, facts).eligibleSpans().get(0);
    }

    @Test
    void yearsFollowOneAnotherFromTheFirstDayOrTheDayAfterThePlan() throws IOException {
        assertThat(inputs("years: [{money: 1}, {money: 2}]", Facts.PLAIN)
                        .rules()
                        .years())
                .containsExactly(
                        new CalendarRules.ProgramYear(LocalDate.of(2027, 1, 16), LocalDate.of(2028, 1, 15)),
                        new CalendarRules.ProgramYear(LocalDate.of(2028, 1, 16), LocalDate.of(2029, 1, 15)));
        assertThat(inputs("first_day: 2028-02-29~years: [{money: 1}, {money: 2}]", Facts.PLAIN)
                        .rules()
                        .years())
                .containsExactly(
                        new CalendarRules.ProgramYear(LocalDate.of(2028, 2, 29), LocalDate.of(2029, 2, 27)),
                        new CalendarRules.ProgramYear(LocalDate.of(2029, 2, 28), LocalDate.of(2030, 2, 27)));
    }

    /** Crews of 30 hours a week: a lower limit holds, a higher one cannot. */
    @Test
    void budgetsAreThoseOfTheConfigAndNoMoreHoursThanTheCrewsHave() throws IOException {
        ProgramInputs inputs = inputs(
                "years: [{money: 100}, {money: , crew_hours: 40}, {money: 0, crew_hours: 99999}]~stop_windows: []~"
                        + "crews: [{name: A, shifts_per_week: 4, shift_hours: 7.5, shifts: days}]",
                Facts.PLAIN);

        assertThat(inputs.budgets().get(0).money()).isEqualTo(100);
        assertThat(inputs.budgets().get(0).crewHours()).isBetween(52 * 30.0 - 7.5, 53 * 30.0);
        assertThat(inputs.budgets().get(1).money()).isInfinite();
        assertThat(inputs.budgets().get(1).crewHours()).isEqualTo(40);
        assertThat(inputs.budgets().get(2).money()).isZero();
        assertThat(inputs.budgets().get(2).crewHours()).isLessThan(99_999);
    }

    @ParameterizedTest
    @CsvSource({"rates, 1000", "likely, 1100", "high, 1300"})
    void theBudgetCountsTheCostThatTheConfigNames(String cost, double money) throws IOException {
        ProgramInputs inputs = inputs("budget_cost: " + cost, Facts.PLAIN);

        assertThat(inputs.eligibleSpans().get(0).budgetMoney()).isEqualTo(money);
        assertThat(inputs.budgetCost().applyAsDouble(new Costs(1_000, new MoneyRange(800, 1_100, 1_300))))
                .isEqualTo(money);
        assertThat(inputs.eligibleSpans().get(0).budgetRatio()).isCloseTo(money / 1_000, within(1e-12));
    }

    /** By hand: 4 positions, 700 saved, 50 m, in 3 of 4 draws. */
    @ParameterizedTest
    @CsvSource({
        "10, 0, 0, false, 40",
        "10, 0, 0, true, 30",
        "0, 0.5, 0, false, 350",
        "0, 0, 2, false, 100",
        "10, 0.5, 2, true, 367.5"
    })
    void worthIsWhatTheObjectiveCounts(double position, double saving, double length, boolean isWeighted, double worth)
            throws IOException {
        String yaml =
                "objective: {position_money: %s, served_ratio: 1, saving_ratio: %s, length_money_per_m: %s, chance_weighted: %s}"
                        .formatted(position, saving, length, isWeighted);

        assertThat(span(yaml, Facts.PLAIN).worthMoney()).isCloseTo(worth, within(1e-9));
    }

    /** What costs more than new build takes nothing from its worth. */
    @Test
    void aLossIsNoWorth() throws IOException {
        var facts = new Facts(List.of(), -900, OptionalInt.empty(), List.of(), List.of(), "");

        assertThat(span("objective: {position_money: 10, saving_ratio: 1, chance_weighted: false}", facts)
                        .worthMoney())
                .isEqualTo(40);
    }

    @Test
    void excludedSpansAreEligibleForConnectionsAndMustsOnly() throws IOException {
        var excluded = new Facts(List.of("pull_force"), 700, OptionalInt.empty(), List.of(), List.of(), "");
        var embargo = new Facts(List.of("embargo"), 700, OptionalInt.empty(), List.of(), List.of(), "");
        var row =
                new Connection(2, "c", "V0", "V1", 1, OptionalDouble.of(9), Optional.empty(), false, Optional.empty());

        assertThat(names(inputs("change_money: 1", excluded))).containsExactly("b");
        assertThat(names(inputs("must: [a]", excluded))).containsExactly("a", "b");
        assertThat(names(inputs("change_money: 1", embargo))).containsExactly("a", "b");
        ProgramInputs connected =
                setting("change_money: 1", excluded, NONE, NONE).inputs(List.of(row), Map.of());
        assertThat(names(connected)).containsExactly("a", "b");
        assertThat(connected.eligibleSpans().get(0).worthMoney()).isZero();
        assertThat(connected.eligibleSpans().get(0).isMust()).isFalse();
        assertThat(span("must: [a]", excluded).isMust()).isTrue();
    }

    @Test
    void whatIsDoneFailedOrRefusedIsNotEligible() throws IOException {
        ProgramInputs done =
                setting("change_money: 1", Facts.PLAIN, Set.of("a"), NONE).inputs(List.of(), Map.of());
        ProgramInputs failed =
                setting("change_money: 1", Facts.PLAIN, NONE, Set.of("a")).inputs(List.of(), Map.of());
        ProgramInputs refused = inputs("must_not: [a]", Facts.PLAIN);

        assertThat(List.of(names(done), names(failed), names(refused))).containsOnly(List.of("b"));
        assertThat(done.network().sections().get(0).ducts().get(0).positionsNow())
                .isEqualTo(5);
        assertThat(failed.network().sections().get(0).ducts().get(0).positionsAfter())
                .isEqualTo(1);
        assertThat(refused.network().sections().get(0).ducts().get(0).positionsAfter())
                .isEqualTo(1);
    }

    /** Its permits take 5 days, notice 3 or 20, a field check 40 where one is listed. */
    @ParameterizedTest
    @CsvSource({"3, '', 5, 0, 2027-01-20", "20, '', 20, 0, 2027-02-04", "20, depth, 20, 40, 2027-02-24"})
    void workWaitsForPermitsNoticeAndChecks(int notice, String check, int leadDays, int checkDays, LocalDate notBefore)
            throws IOException {
        var facts = new Facts(List.of(), 700, OptionalInt.empty(), List.of(), List.of(), check);

        EligibleSpan span = span("notice_days: " + notice + "~check_days: 40", facts);

        assertThat(span.leadDays()).isEqualTo(leadDays);
        assertThat(span.checkDays()).isEqualTo(checkDays);
        assertThat(span.notBefore()).isEqualTo(notBefore);
    }

    @ParameterizedTest
    @CsvSource({"2027-07-01, 2027-07-01", "2027-01-18, 2027-01-25"})
    void anEmbargoHoldsWhereItEndsAfterThePermitsAreThere(LocalDate embargo, LocalDate notBefore) throws IOException {
        Path file = Files.writeString(folder.resolve("p.yaml"), "notice_days: 10\n");
        Map<String, SpanFacts> all = Map.of("a", facts("a", Facts.PLAIN), "b", facts("b", Facts.PLAIN));

        ProgramInputs inputs = new ProgramSetting(
                        ProgramConfigReader.read(file), all, network(Optional.of(embargo)), NONE, NONE)
                .inputs(List.of(), Map.of());

        assertThat(inputs.eligibleSpans().get(0).notBefore()).isEqualTo(notBefore);
    }

    @Test
    void windowsOfAllWorkAreStopsAndThoseOfZonesAndFreezesCloseSpans() throws IOException {
        String yaml = """
                first_day: 2027-02-01
                years: [{money: 1}]
                stop_windows:
                  - {name: all, from: 2027-05-01, until: 2027-05-09, zone_kinds: []}
                  - {name: school, from: 06-01, until: 06-30, zone_kinds: [school]}
                closed_zone_kinds: [event]
                change_freezes:
                  - {name: freeze, from: 2027-03-01, until: 2027-03-05, least_circuits: 24}
                """;
        var fair = new Closure("event zone", LocalDate.of(2027, 8, 1), LocalDate.of(2027, 8, 9));
        var other = new Closure("rail zone", LocalDate.of(2027, 9, 1), LocalDate.of(2027, 9, 9));
        List<SpanFacts.ZoneDays> days =
                List.of(new SpanFacts.ZoneDays("event", fair), new SpanFacts.ZoneDays("rail", other));
        var freeze = new Closure("freeze", LocalDate.of(2027, 3, 1), LocalDate.of(2027, 3, 5));
        var school = new Closure("school", LocalDate.of(2027, 6, 1), LocalDate.of(2027, 6, 30));

        ProgramInputs busy =
                inputs(yaml, new Facts(List.of(), 700, OptionalInt.of(24), List.of("school", "event"), days, ""));
        ProgramInputs quiet =
                inputs(yaml, new Facts(List.of(), 700, OptionalInt.of(23), List.of("rail"), List.of(), ""));

        assertThat(busy.rules().stops())
                .containsExactly(new Closure("all", LocalDate.of(2027, 5, 1), LocalDate.of(2027, 5, 9)));
        assertThat(busy.eligibleSpans().get(0).closures()).containsExactly(freeze, school, fair);
        assertThat(quiet.eligibleSpans().get(0).closures()).isEmpty();
    }

    @Test
    void daysOfZonesAreReadBackWithOpenEnds() {
        assertThat(ProgramFacts.zoneDays("")).isEmpty();
        assertThat(ProgramFacts.zoneDays("event 2027-03-01/2027-10-31;street fair ../2027-04-01"))
                .containsExactly(
                        new SpanFacts.ZoneDays(
                                "event",
                                new Closure("event zone", LocalDate.of(2027, 3, 1), LocalDate.of(2027, 10, 31))),
                        new SpanFacts.ZoneDays(
                                "street fair",
                                new Closure("street fair zone", LocalDate.MIN, LocalDate.of(2027, 4, 1))));
    }
}
