package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.spanroom.config.ProgramConfig;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.PriceItem;
import org.spanroom.program.ProgramInputs;
import org.spanroom.program.WhatIfs;

/** What each condition of a program costs: the program is planned quickly without it, and compared with one that was planned as quickly with it. */
final class ConditionPrices {
    /** Of each kind of condition: more would take long and show little. */
    private static final int MOST = 10;

    private final ProgramConfig config;
    private final WhatIfs whatIfs;
    private final WhatIfs.Amounts base;
    private final List<PriceItem> prices = new ArrayList<>();

    ConditionPrices(ProgramConfig config, WhatIfs whatIfs, WhatIfs.Amounts base) {
        this.config = config;
        this.whatIfs = whatIfs;
        this.base = base;
    }

    /**
     * Returns the prices.
     *
     * @param inputs makes the inputs of a config and a table of connections
     */
    List<PriceItem> list(
            BiFunction<ProgramConfig, List<Connection>, ProgramInputs> inputs, List<Connection> connections) {
        config.must().stream()
                .limit(MOST)
                .forEach(span -> add("must", span, inputs, config.withMust(less(config.must(), span)), connections));
        config.mustNot().stream()
                .limit(MOST)
                .forEach(span ->
                        add("must_not", span, inputs, config.withMustNot(less(config.mustNot(), span)), connections));
        config.stopWindows().stream()
                .limit(MOST)
                .forEach(window -> add(
                        "stop_window",
                        window.name(),
                        inputs,
                        config.withStopWindows(less(config.stopWindows(), window)),
                        connections));
        config.changeFreezes().stream()
                .limit(MOST)
                .forEach(freeze -> add(
                        "change_freeze",
                        freeze.name(),
                        inputs,
                        config.withChangeFreezes(less(config.changeFreezes(), freeze)),
                        connections));
        connections.stream()
                .filter(connection ->
                        connection.problem().isEmpty() && connection.neededBy().isPresent())
                .limit(MOST)
                .forEach(connection ->
                        add("needed_by", connection.name(), inputs, config, withoutDay(connections, connection)));
        CrewTeam first = config.crews().get(0);
        var another = new ArrayList<>(config.crews());
        another.add(new CrewTeam("additional crew", first.shiftsPerWeek(), first.shiftHours(), first.shifts()));
        add("crew", "one additional crew like " + first.name(), inputs, config.withCrews(another), connections);
        return prices;
    }

    private void add(
            String kind,
            String name,
            BiFunction<ProgramConfig, List<Connection>, ProgramInputs> inputs,
            ProgramConfig other,
            List<Connection> connections) {
        whatIfs.amounts(inputs.apply(other, connections))
                .map(amounts -> amounts.over(base, kind, name))
                .ifPresent(prices::add);
    }

    private static <T> List<T> less(List<T> all, T one) {
        return all.stream().filter(item -> !item.equals(one)).toList();
    }

    private static List<Connection> withoutDay(List<Connection> connections, Connection one) {
        return connections.stream()
                .map(row -> row.equals(one)
                        ? new Connection(
                                row.line(),
                                row.name(),
                                row.from(),
                                row.to(),
                                row.cables(),
                                row.value(),
                                Optional.empty(),
                                row.must(),
                                row.problem())
                        : row)
                .toList();
    }
}
