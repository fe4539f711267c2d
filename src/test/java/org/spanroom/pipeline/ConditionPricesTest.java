package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ProgramConfig;
import org.spanroom.config.ProgramConfigReader;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.PriceItem;
import org.spanroom.program.ProgramInputs;
import org.spanroom.program.WhatIfs;
import org.spanroom.program.YearSolver;
import org.spanroom.program.annual.YearPlan;

/** Which conditions are tried, and that each is left out alone: the solver is a stand-in whose plans are worth 100, 200 and so on. */
class ConditionPricesTest {
    private static final DuctNetwork EMPTY = new DuctNetwork(List.of(), List.of(), 0, LocalDate.of(2027, 1, 15));

    @TempDir
    private Path folder;

    private final List<ProgramConfig> configs = new ArrayList<>();
    private final List<List<Connection>> tables = new ArrayList<>();
    private int solved;

    private ProgramConfig config(String yaml) throws IOException {
        return ProgramConfigReader.read(Files.writeString(folder.resolve("p.yaml"), yaml));
    }

    private List<PriceItem> prices(ProgramConfig config, List<Connection> connections) {
        YearSolver solver = (problem, effort) -> {
            assertThat(effort).isEqualTo(YearSolver.Effort.QUICK);
            solved++;
            var plan =
                    new YearPlan(List.of(), List.of(), Map.of(), 100.0 * solved, List.of(List.of(10.0 * solved, 0.0)));
            return new YearSolver.Solved(Optional.of(plan), 0, List.of(), true);
        };
        var base = new WhatIfs.Amounts(50, 0, 0, 5);
        return new ConditionPrices(config, new WhatIfs(solver), base)
                .list(
                        (other, table) -> {
                            configs.add(other);
                            tables.add(table);
                            return inputs(other);
                        },
                        connections);
    }

    private static ProgramInputs inputs(ProgramConfig config) {
        return new ProgramSetting(config, Map.of(), EMPTY, Set.of(), Set.of()).inputs(List.of(), Map.of());
    }

    private static Connection row(String name, boolean isUsable, boolean hasDay) {
        return new Connection(
                2,
                name,
                "A",
                "B",
                1,
                OptionalDouble.of(1),
                hasDay ? Optional.of(LocalDate.of(2027, 5, 1)) : Optional.empty(),
                true,
                isUsable ? Optional.empty() : Optional.of("it has no name"));
    }

    @Test
    void eachConditionIsLeftOutAlone() throws IOException {
        ProgramConfig config = config("""
                years: [{money: 100}]
                must: [a, b]
                must_not: [c]
                stop_windows:
                  - {name: winter, from: 12-15, until: 01-31, zone_kinds: []}
                change_freezes:
                  - {name: freeze, from: 11-20, until: 01-05, least_circuits: 24}
                crews:
                  - {name: A, shifts_per_week: 4, shift_hours: 7.5, shifts: either}
                """);
        List<Connection> connections =
                List.of(row("dated", true, true), row("free", true, false), row("unusable", false, true));

        List<PriceItem> prices = prices(config, connections);

        assertThat(prices)
                .extracting(price -> price.kind() + " " + price.name())
                .containsExactly(
                        "must a",
                        "must b",
                        "must_not c",
                        "stop_window winter",
                        "change_freeze freeze",
                        "needed_by dated",
                        "crew one additional crew like A");
        assertThat(prices.get(0)).isEqualTo(new PriceItem("must", "a", 50, 0, 0, 5));
        assertThat(prices.get(6).valueMoney()).isEqualTo(650);
        assertThat(configs.get(0).must()).containsExactly("b");
        assertThat(configs.get(1).must()).containsExactly("a");
        assertThat(configs.get(2).mustNot()).isEmpty();
        assertThat(configs.get(3).stopWindows()).isEmpty();
        assertThat(configs.get(4).changeFreezes()).isEmpty();
        assertThat(configs.get(5)).isEqualTo(config);
        assertThat(tables.get(5).get(0).neededBy()).isEmpty();
        assertThat(tables.get(5).get(0).must()).isTrue();
        assertThat(tables.get(5).subList(1, 3)).isEqualTo(connections.subList(1, 3));
        assertThat(configs.get(6).crews()).hasSize(2);
        for (int place = 0; place < 5; place++) {
            assertThat(tables.get(place)).isEqualTo(connections);
            assertThat(configs.get(place).crews()).isEqualTo(config.crews());
        }
    }

    @Test
    void ofManyOfAKindTenAreTried() throws IOException {
        String musts = IntStream.range(0, 25).mapToObj(span -> "s" + span).collect(Collectors.joining(", "));

        List<PriceItem> prices =
                prices(config("must: [" + musts + "]\nstop_windows: []\nchange_freezes: []\n"), List.of());

        assertThat(prices.stream().filter(price -> price.kind().equals("must"))).hasSize(10);
    }

    /** A condition without which no plan holds the other musts has no price. */
    @Test
    void whatGivesNoPlanHasNoPrice() throws IOException {
        YearSolver never = (problem, effort) -> new YearSolver.Solved(Optional.empty(), 0, List.of("none"), true);
        ProgramConfig config = config("must: [a]\n");

        assertThat(new ConditionPrices(config, new WhatIfs(never), new WhatIfs.Amounts(0, 0, 0, 0))
                        .list((other, table) -> inputs(other), List.of()))
                .isEmpty();
    }
}
