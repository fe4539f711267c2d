package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.program.NetworkBuilder.duct;
import static org.spanroom.program.NetworkBuilder.free;
import static org.spanroom.program.NetworkBuilder.newDuct;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.spanroom.model.program.ConnectionStep;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.ProgramConnection;
import org.spanroom.model.program.ProgramDucts;
import org.spanroom.model.program.ProgramItem;
import org.spanroom.model.program.ProgramResults;
import org.spanroom.model.program.ProgramTotals;
import org.spanroom.model.program.ReserveItem;
import org.spanroom.model.program.YearSpread;
import org.spanroom.program.annual.YearPlan;
import org.spanroom.program.annual.YearProblem;

/** What is reported of programs whose year plan is given by hand. */
class ProgramAssemblerTest {
    /** A year plan by hand; only what connections need matters in it. */
    private static YearPlan plan(
            List<Integer> years, List<Optional<YearPlan.Served>> served, Map<Integer, List<Integer>> built) {
        return new YearPlan(years, served, built, 0, List.of(List.of(0.0, 0.0), List.of(0.0, 0.0)));
    }

    private static ProgramResults results(ProgramInputs inputs, YearPlan plan, Map<Integer, Double> chosen) {
        YearProblem problem = new YearModel(inputs).problem();
        YearSolver solver = (asked, effort) -> new YearSolver.Solved(Optional.of(plan), 1e9, List.of(), true);
        ProgramPlanner.Planned planned = new ProgramPlanner(inputs, problem, solver)
                .plan(new ArrayList<>())
                .orElseThrow();
        return new ProgramAssembler(inputs, problem, planned, chosen)
                .results(Map.of("far", "more than the budgets"), List.of(), List.of());
    }

    private static ProgramItem item(ProgramResults results, String span) {
        return results.items().stream()
                .filter(item -> item.span().facts().spanId().equals(span))
                .findFirst()
                .orElseThrow();
    }

    private static ProgramTotals totals(ProgramResults results, int year, String column, String group) {
        return results.totals().stream()
                .filter(row -> row.year() == year
                        && row.column().equals(column)
                        && row.group().equals(group))
                .findFirst()
                .orElseThrow();
    }

    private static Optional<YearPlan.Served> served(int year, List<Integer> way, List<Integer> bins) {
        return Optional.of(new YearPlan.Served(year, way, bins));
    }

    /** Three spans in two years: a and b of 2 and 3 positions in the first, c of 4 in the second; d is in none. */
    private static ProgramInputs threeSpans() {
        DuctNetwork network = new NetworkBuilder(5)
                .section(0, 1, 50, duct("a", 0, 2, 900, 0, 0b0111))
                .section(1, 2, 50, duct("b", 0, 3, 900, 0, 0b0001))
                .section(2, 3, 50, duct("c", 0, 4, 900, 0, 0b1111))
                .section(3, 4, 50, duct("d", 0, 1, 900, 0, 0b1111))
                .build();
        return new ProgramCase(network)
                .group("a", "owner", "Quay")
                .group("b", "owner", "Quay")
                .group("c", "owner", "Hill")
                .inputs();
    }

    @Test
    void totalsAreSumsByYearAndByColumn() {
        ProgramResults results = results(threeSpans(), plan(List.of(0, 0, 1, -1), List.of(), Map.of()), Map.of());

        ProgramTotals first = totals(results, 0, "", "");
        assertThat(first.spans()).isEqualTo(2);
        assertThat(first.positions()).isEqualTo(5);
        assertThat(first.expectedPositions()).isCloseTo(2 * 0.75 + 3 * 0.25, within(1e-9));
        assertThat(first.siteHours()).isCloseTo(3.5, within(1e-9));
        assertThat(first.costs().money()).isCloseTo(1_750, within(1e-9));
        assertThat(first.innerductKg()).isEqualTo(100);
        assertThat(first.trenchM()).isEqualTo(20);
        assertThat(first.boreM()).isEqualTo(40);
        assertThat(first.co2eKg()).isEqualTo(10);
        assertThat(totals(results, ProgramSums.ALL_YEARS, "", "").positions()).isEqualTo(9);
        assertThat(totals(results, 0, "owner", "Quay").positions()).isEqualTo(5);
        assertThat(totals(results, 1, "owner", "Hill").positions()).isEqualTo(4);
        assertThat(totals(results, ProgramSums.ALL_YEARS, "owner", "Quay").spans())
                .isEqualTo(2);
        for (int year = ProgramSums.ALL_YEARS; year < 2; year++) {
            int number = year;
            double groups = results.totals().stream()
                    .filter(row -> row.year() == number && row.column().equals("owner"))
                    .mapToDouble(row -> row.costs().money())
                    .sum();
            assertThat(groups).isCloseTo(totals(results, year, "", "").costs().money(), within(1e-9));
        }
    }

    /** New ducts for both spans of a section would lie in one trench. */
    @Test
    void spansOfASectionShareTheTrenchThatTheyAvoid() {
        DuctNetwork network = new NetworkBuilder(3)
                .section(0, 1, 50, duct("a", 0, 2, 900), duct("b", 0, 3, 900))
                .section(1, 2, 50, duct("c", 0, 4, 900))
                .build();
        ProgramResults results =
                results(new ProgramCase(network).inputs(), plan(List.of(0, 0, 1), List.of(), Map.of()), Map.of());

        assertThat(totals(results, 0, "", "").trenchM()).isEqualTo(10);
        assertThat(totals(results, 0, "", "").boreM()).isEqualTo(20);
        assertThat(totals(results, ProgramSums.ALL_YEARS, "", "").trenchM()).isEqualTo(20);
        assertThat(totals(results, 0, "", "").innerductKg()).isEqualTo(100);
    }

    /**
     * By hand, positions of the first year over the four draws: 2 + 3, 2, 2, 0, which are 0, 2, 2, 5 in order. The tenth lies 0.3 of the way from
     * the first to the second, the nine tenths 0.7 of the way from the third to the fourth.
     */
    @Test
    void spreadsAreThoseOfTheDraws() {
        List<YearSpread> spreads = results(threeSpans(), plan(List.of(0, 0, 1, -1), List.of(), Map.of()), Map.of())
                .spreads();

        assertThat(spreads).hasSize(2);
        assertThat(spreads.get(0).lowPositions()).isCloseTo(0.6, within(1e-9));
        assertThat(spreads.get(0).likelyPositions()).isCloseTo(2, within(1e-9));
        assertThat(spreads.get(0).highPositions()).isCloseTo(4.1, within(1e-9));
        assertThat(spreads.get(1)).isEqualTo(new YearSpread(1, 4, 4, 4));
    }

    @Test
    void withoutDrawsThereAreNeitherSpreadsNorChances() {
        DuctNetwork network = new NetworkBuilder(2)
                .samples(0)
                .section(0, 1, 50, duct("a", 0, 2, 900))
                .build();
        ProgramResults results =
                results(new ProgramCase(network).inputs(), plan(List.of(0), List.of(), Map.of()), Map.of());

        assertThat(results.spreads()).isEmpty();
        assertThat(item(results, "a").chanceRatio()).isEmpty();
        assertThat(totals(results, 0, "", "").expectedPositions()).isEqualTo(2);
    }

    /** What the second of two neighbors shares comes off its cost, its range and its budget money. */
    @Test
    void whatIsSharedComesOffTheCostOnce() {
        ProgramResults results = results(threeSpans(), plan(List.of(0, 0, 1, -1), List.of(), Map.of()), Map.of());

        ProgramItem first = results.items().get(0);
        ProgramItem second = results.items().get(1);
        assertThat(first.costs().money()).isEqualTo(900);
        assertThat(second.costs().money()).isCloseTo(850, within(1e-9));
        assertThat(second.costs().range().highMoney()).isCloseTo(1.3 * 850, within(1e-9));
        assertThat(second.budgetMoney()).isCloseTo(850, within(1e-9));
        String before = first.span().facts().spanId();
        assertThat(second.why()).endsWith("shares a set-up with " + before);
        assertThat(first.why()).doesNotContain("shares");
        assertThat(item(results, "c").why()).isEqualTo("adds 4 positions at 225 each");
    }

    /** Those that are chosen most often come first, then what is worth most for its money; those that cannot be done have no place. */
    @Test
    void theReserveIsInOrderAndSaysWhyNot() {
        DuctNetwork network = new NetworkBuilder(8)
                .section(0, 1, 50, duct("in", 0, 4, 900))
                .section(1, 2, 50, duct("often", 0, 4, 1_000))
                .section(2, 3, 50, duct("cheap", 0, 4, 500))
                .section(3, 4, 50, duct("dear", 0, 1, 9_000))
                .section(4, 5, 50, duct("night", 0, 4, 900))
                .section(5, 6, 50, duct("late", 0, 4, 900, 4_000, 0b1111))
                .section(6, 7, 50, duct("excluded", 0, 4, 900), duct("closed", 0, 4, 900))
                .build();
        ProgramInputs inputs = new ProgramCase(network)
                .nights("night")
                .excluded("excluded", "pull_force")
                .closed("closed", LocalDate.MIN, LocalDate.MAX)
                .inputs();

        List<ReserveItem> reserve = results(
                        inputs,
                        plan(List.of(0, -1, -1, -1, -1, -1, -1, -1), List.of(), Map.of()),
                        Map.of(1, 0.5, 3, 0.25, 2, 0.25))
                .reserve();

        assertThat(reserve)
                .extracting(item -> item.span().facts().spanId())
                .containsExactly("often", "cheap", "dear", "night", "late", "excluded", "closed");
        assertThat(reserve).extracting(ReserveItem::place).containsExactly(1, 2, 3, 0, 0, 0, 0);
        assertThat(reserve.get(0).chosenRatio()).isEqualTo(OptionalDouble.of(0.5));
        assertThat(reserve.get(4).chosenRatio()).isEmpty();
        assertThat(reserve)
                .extracting(ReserveItem::whyNot)
                .containsExactly(
                        "a position costs 250; the most expensive one in the program costs 225",
                        "other work is worth more for the budgets, hours and dates of the years",
                        "a position costs 9,000; the most expensive one in the program costs 225",
                        "no crew works nights",
                        "it cannot begin before 2037-12-28; the program ends on 2029-01-31",
                        "only a connection or a must brings it in: pull_force",
                        "no day of the program is open for it: stop windows, zone dates, change freezes");
    }

    @Test
    void aCrewOfNightsLeavesDaysToNone() {
        DuctNetwork network =
                new NetworkBuilder(2).section(0, 1, 50, duct("day", 0, 4, 900)).build();
        ProgramInputs inputs = new ProgramCase(network)
                .crews(new CrewTeam("owls", 4, 8, CrewTeam.Shifts.NIGHTS))
                .inputs();

        assertThat(results(inputs, plan(List.of(-1), List.of(), Map.of()), Map.of())
                        .reserve()
                        .get(0)
                        .whyNot())
                .isEqualTo("no crew works days");
    }

    /** An eligible span is in the program or in the reserve, never in both. */
    @Test
    void eachEligibleSpanIsInOneOfBothLists() {
        ProgramResults results = results(threeSpans(), plan(List.of(1, -1, 0, -1), List.of(), Map.of()), Map.of());

        var spans = new ArrayList<String>();
        results.items().forEach(item -> spans.add(item.span().facts().spanId()));
        results.reserve().forEach(item -> spans.add(item.span().facts().spanId()));
        assertThat(spans).containsExactlyInAnyOrder("a", "b", "c", "d");
    }

    /** Two connections of 2 and 1 cables share a recovered duct of 900, then each has free room; a third is not served. */
    private static ProgramResults connected() {
        DuctNetwork network = new NetworkBuilder(5)
                .section(0, 1, 50, duct("a", 0, 3, 900))
                .section(1, 2, 50, free("b", 9))
                .section(2, 3, 50, newDuct(2, 2_000, 500, 0))
                .section(3, 4, 50, duct("idle", 5, 9, 900))
                .build();
        ProgramInputs inputs = new ProgramCase(network)
                .musts("idle")
                .connect("x", 0, 2, 2, 5_000, "2027-12-31", false)
                .connect("y", 0, 1, 1, 5_000, "", false)
                .connect("built", 2, 4, 1, 5_000, "", true)
                .connect("far", 0, 3, 2, 10, "2028-12-31", false)
                .connect("early", 0, 3, 2, 10, "2027-01-20", false)
                .connect("self", 1, 1, 2, 10, "", false)
                .inputs();
        return results(
                inputs,
                plan(
                        List.of(0, 1),
                        List.of(
                                served(0, List.of(0, 1), List.of(0, 0)),
                                served(0, List.of(0), List.of(0)),
                                served(1, List.of(2, 3), List.of(0, 0)),
                                Optional.empty(),
                                Optional.empty()),
                        Map.of(2, List.of(1))),
                Map.of());
    }

    @Test
    void connectionsAreServedOnTheLastDayOfTheirLastWork() {
        ProgramResults results = connected();

        List<LocalDate> days = item(results, "a").entry().days();
        ProgramConnection x = results.connections().get(0);
        assertThat(x.year()).isEqualTo(OptionalInt.of(0));
        assertThat(x.servedOn()).contains(days.get(days.size() - 1));
        assertThat(x.whyNot()).isEmpty();
        assertThat(results.connections().get(2).servedOn()).contains(LocalDate.of(2029, 1, 31));
    }

    @Test
    void whatConnectionsShareIsPaidByTheirCables() {
        ProgramResults results = connected();

        List<ConnectionStep> x = results.connections().get(0).way();
        assertThat(x).hasSize(2);
        assertThat(x.get(0).shareMoney()).isCloseTo(600, within(1e-9));
        assertThat(x.get(0).sharedWith()).containsExactly("y");
        assertThat(x.get(1).shareMoney()).isZero();
        assertThat(results.connections().get(1).way().get(0).shareMoney()).isCloseTo(300, within(1e-9));
        assertThat(results.connections().get(2).way())
                .extracting(ConnectionStep::shareMoney)
                .containsExactly(2_000.0, 0.0);
    }

    /** A span is needed by the connections that its free positions do not suffice for, and by no others. */
    @Test
    void spansNameTheConnectionsThatNeedThem() {
        ProgramResults results = connected();

        assertThat(item(results, "a").connections()).containsExactly("x", "y");
        assertThat(item(results, "a").why()).startsWith("needed by x, y; adds 3 positions at 300 each");
        assertThat(item(results, "idle").connections()).isEmpty();
        assertThat(item(results, "idle").why()).startsWith("it is on the list of musts");
    }

    @Test
    void connectionsThatAreNotServedSayWhyNot() {
        List<ProgramConnection> rows = connected().connections();

        assertThat(rows)
                .extracting(row -> row.connection().name())
                .containsExactly("x", "y", "built", "far", "early", "self");
        assertThat(rows.get(3).isServed()).isFalse();
        assertThat(rows.get(3).whyNot())
                .isEqualTo("until 2028-12-31, other work is worth more, or the budget or the hours are too small");
        assertThat(rows.get(3).takes()).isEqualTo("more than the budgets");
        assertThat(rows.get(4).whyNot()).isEqualTo("needed by 2027-01-20, before the program begins on 2027-02-01");
        assertThat(rows.get(5).whyNot()).isEqualTo("it connects vault V1 to itself");
    }

    @Test
    void newDuctsAreListedByYearWithTheirLastDayToApply() {
        ProgramResults results = connected();

        assertThat(results.ducts()).hasSize(1);
        ProgramDucts ducts = results.ducts().get(0);
        assertThat(ducts.year()).isEqualTo(1);
        assertThat(ducts.ducts()).isEqualTo(1);
        assertThat(ducts.costs().money()).isEqualTo(2_000);
        assertThat(ducts.budgetMoney()).isEqualTo(2_000);
        assertThat(ducts.applyBy()).isEqualTo(LocalDate.of(2029, 1, 31));
        assertThat(ducts.connections()).containsExactly("built");
        assertThat(totals(results, 1, "", "").costs().money()).isCloseTo(2_900, within(1e-9));
    }
}
