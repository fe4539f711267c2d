package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.program.NetworkBuilder.ON_DATE;
import static org.spanroom.program.NetworkBuilder.duct;
import static org.spanroom.program.NetworkBuilder.free;
import static org.spanroom.program.NetworkBuilder.newDuct;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.ConnectionResult;
import org.spanroom.model.program.ConnectionStep;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.program.design.DesignSearch;
import org.spanroom.program.design.SearchSettings;

/** What becomes of connections on networks small enough to see the answer. */
class ConnectPlanTest {
    private static Connection ask(String name, int from, int to, int cables) {
        return ask(name, from, to, cables, OptionalDouble.empty(), false);
    }

    private static Connection ask(String name, int from, int to, int cables, OptionalDouble value, boolean must) {
        return new Connection(
                2, name, "V" + from, "V" + to, cables, value, Optional.empty(), must, Optional.empty());
    }

    private static List<ConnectionResult> results(DuctNetwork network, boolean serveAll, Connection... rows) {
        var plan = new ConnectPlan(network, List.of(rows), serveAll);
        SearchSettings settings = SearchSettings.DEFAULT.withIterations(200);
        DesignSearch.Result found = new DesignSearch(plan.problem()).run(settings);
        return plan.results(found.design(), found.unserved());
    }

    private static String way(ConnectionResult result) {
        var parts = new ArrayList<String>();
        for (ConnectionStep step : result.steps()) {
            parts.add(step.step().action().key() + " "
                    + step.step().duct().map(duct -> duct.spanId()).orElse("new" + step.newDuct()));
        }
        return String.join(", ", parts);
    }

    /** Ducts of 4 and 4: cables 3, 3 and 2 are 8, and do not go in, since none is split; 4, 2 and 2 do. */
    @ParameterizedTest
    @CsvSource({"3, 3, 2, 2", "4, 2, 2, 3", "4, 3, 1, 3", "3, 3, 1, 3"})
    void cablesAreNotSplitOverDucts(int first, int second, int third, long served) {
        DuctNetwork network = new NetworkBuilder(2).section(0, 1, 50, free("a", 4), free("b", 4)).build();

        List<ConnectionResult> results = results(
                network, true, ask("1", 0, 1, first), ask("2", 1, 0, second), ask("3", 0, 1, third));

        assertThat(results.stream().filter(ConnectionResult::isServed)).hasSize((int) served);
        assertThat(results.stream().filter(result -> !result.isServed()))
                .allSatisfy(result -> assertThat(result.whyNot())
                        .isEqualTo("with the other connections no room is left on any way"));
    }

    /** 1,000 for 4 and 2 cables: each pays by its cables, and both know of each other; free positions are shared by others. */
    @Test
    void aDuctIsPaidOnceAndSharedByCables() {
        DuctNetwork network = new NetworkBuilder(3)
                .section(0, 1, 50, duct("a", 0, 9, 1_000))
                .section(1, 2, 50, free("b", 6))
                .build();

        List<ConnectionResult> results = results(network, true, ask("x", 0, 2, 4), ask("y", 1, 0, 2));

        assertThat(way(results.get(0))).isEqualTo("recover a, free b");
        assertThat(way(results.get(1))).isEqualTo("recover a");
        assertThat(results).extracting(ConnectionResult::sharedWith).containsExactly(List.of("y"), List.of("x"));
        assertThat(results.get(0).shareMoney()).isCloseTo(1_000 * 4 / 6.0, within(1e-9));
        assertThat(results.get(1).shareMoney()).isCloseTo(1_000 * 2 / 6.0, within(1e-9));
        assertThat(results.get(0).steps().get(0).cablesInDuct()).isEqualTo(6);
        assertThat(results.get(0).steps().get(0).cost().money()).isEqualTo(1_000);
        assertThat(results.get(1).steps().get(0).step().forward()).isFalse();
    }

    @Test
    void anEmptyDuctIsUsedBeforeAnotherIsRecovered() {
        DuctNetwork network = new NetworkBuilder(2)
                .section(0, 1, 50, free("empty", 6), duct("full", 0, 9, 1))
                .build();

        List<ConnectionResult> results = results(network, true, ask("x", 0, 1, 3), ask("y", 0, 1, 3));
        List<ConnectionResult> one = results(network, true, ask("x", 0, 1, 3), ask("y", 0, 1, 3), ask("z", 0, 1, 3));

        assertThat(results).extracting(ConnectPlanTest::way).containsOnly("free empty");
        assertThat(one.stream().filter(result -> way(result).equals("recover full"))).hasSize(1);
    }

    /** The far part has no duct with room; a must is served by a new one, whatever it costs, and others only if they are worth it. */
    @ParameterizedTest
    @CsvSource({"true, , true", "false, , false", "false, 700000, true", "false, 100, false"})
    void aMustThatOnlyANewBuildServes(boolean must, Double value, boolean served) {
        DuctNetwork network = new NetworkBuilder(3)
                .section(0, 1, 50, free("a", 4))
                .section(1, 2, 50, newDuct(4, 60_000, 8_000, 90), free("b", 1))
                .build();
        OptionalDouble worth = value == null ? OptionalDouble.empty() : OptionalDouble.of(value);

        ConnectionResult result = results(network, false, ask("x", 0, 2, 2, worth, must)).get(0);

        assertThat(way(result)).isEqualTo(served ? "free a, build new1" : "");
        assertThat(result.whyNot())
                .isEqualTo(
                        served
                                ? ""
                                : "serving it would cost 60,000 in addition, "
                                        + (value == null
                                                ? "and the table gives it no value"
                                                : "more than its value of 100"));
        assertThat(result.findWay().map(way -> way.earliest(ON_DATE)))
                .isEqualTo(served ? Optional.of(ON_DATE.plusDays(90)) : Optional.empty());
        assertThat(result.leastMoney()).isEqualTo(served ? 0 : 60_000);
    }

    /** Three groups of 4 need three new ducts of 4: one trench, 10,000, and two more ducts in it for 1,000 each; 4,000 for each. */
    @Test
    void ductsThatAreBuiltTogetherShareTheirTrench() {
        DuctNetwork network = new NetworkBuilder(2).section(0, 1, 50, newDuct(4, 10_000, 1_000, 90)).build();

        List<ConnectionResult> results =
                results(network, true, ask("x", 0, 1, 4), ask("y", 0, 1, 4), ask("z", 0, 1, 4));

        assertThat(results).extracting(ConnectPlanTest::way).containsExactlyInAnyOrder("build new1", "build new2", "build new3");
        assertThat(results)
                .allSatisfy(result -> assertThat(result.shareMoney()).isCloseTo(4_000, within(1e-9)));
    }

    @Test
    void whatCannotBeServedSaysWhy() {
        DuctNetwork network = new NetworkBuilder(6)
                .section(0, 1, 50, free("a", 4))
                .section(2, 3, 50, free("b", 4))
                .section(4, 5, 50, free("c", 0))
                .build();

        assertThat(results(
                        network,
                        true,
                        ask("self", 0, 0, 1),
                        ask("unknown", 0, 9, 1),
                        ask("apart", 3, 0, 1),
                        ask("wide", 0, 1, 5),
                        ask("shut", 4, 5, 1),
                        ask("bad", 0, 1, 1).withProblem("it has no name"),
                        ask("good", 0, 1, 1)))
                .extracting(ConnectionResult::whyNot)
                .containsExactly(
                        "it connects vault V0 to itself",
                        "no span of the run ends at vault V9",
                        "no sections join its vaults; the gap is narrowest between vault V2 and vault V1, 111 m apart",
                        "no way takes 5 cables in one duct, recovered or new; at most 4 can go together",
                        "every way has a section that takes no cable: no free position, no duct to recover, no price of a new one",
                        "it has no name",
                        "");
    }

    /** Two rows that are equal but for their line are two connections. */
    @Test
    void twoRowsOfOneContentAreTwoConnections() {
        DuctNetwork network = new NetworkBuilder(2).section(0, 1, 50, free("a", 2)).build();

        List<ConnectionResult> results = results(network, true, ask("x", 0, 1, 1), ask("y", 0, 1, 1));

        assertThat(results).allMatch(ConnectionResult::isServed);
        assertThat(results.get(0).steps().get(0).cablesInDuct()).isEqualTo(2);
        assertThat(results.get(0).sharedWith()).as("nothing is paid for").isEmpty();
        assertThat(results.get(0).steps().get(0).sharedWith()).containsExactly("y");
    }

    @ParameterizedTest
    @CsvSource({"2027-01-24, false", "2027-01-25, true", "2028-01-01, true", ", "})
    void onTimeIsTheDayItselfOrBefore(LocalDate neededBy, Boolean onTime) {
        DuctNetwork network = new NetworkBuilder(2)
                .section(0, 1, 50, duct("a", 0, 2, 5, 10, 15))
                .build();
        var row = new Connection(
                2,
                "x",
                "V0",
                "V1",
                1,
                OptionalDouble.empty(),
                Optional.ofNullable(neededBy),
                false,
                Optional.empty());

        assertThat(results(network, true, row).get(0).isOnTime(ON_DATE)).isEqualTo(Optional.ofNullable(onTime));
    }
}
