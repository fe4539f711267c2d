package org.spanroom.output.columns;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.ConnectionStep;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.ProgramConnection;
import org.spanroom.model.program.ProgramDucts;
import org.spanroom.model.program.WayStep;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of what an annual program does for connections, and of the new ducts that it builds. */
public final class AnnualNetworkColumns {
    /** One row for each section and year with new ducts. */
    public static final Table<ProgramDucts> NEW_DUCTS = Table.layer(
            "new_ducts",
            "One row for each section in which the program builds new ducts, and year.",
            GeometryKind.LINE,
            ducts -> ducts.section().lonLat().map(Shape::line).orElse(Shape.EMPTY),
            Stream.of(
                            List.<Column<ProgramDucts>>of(
                                    Column.integer(
                                            "year",
                                            "year",
                                            "Year of the program in which they are built, from 1.",
                                            ducts -> ducts.year() + 1),
                                    Column.text(
                                            "section",
                                            "section",
                                            "Name of the section.",
                                            ducts -> ducts.section().id()),
                                    Column.integer("ducts", "ducts", "How many are built.", ProgramDucts::ducts)),
                            AnnualColumns.costs(ProgramDucts::costs, "of all of them together"),
                            List.<Column<ProgramDucts>>of(
                                    Column.real(
                                            "budget_money",
                                            "budget",
                                            2,
                                            "The part of that cost that counts against the budget of the year.",
                                            ProgramDucts::budgetMoney),
                                    Column.text(
                                            "apply_by",
                                            "apply_by",
                                            "Last day to apply for their permits, so that they can be built in the year.",
                                            ProgramDucts::applyBy),
                                    Column.text(
                                            "connections",
                                            "connects",
                                            "Connections that go through them, joined by ;.",
                                            ducts -> String.join(";", ducts.connections()))))
                    .flatMap(List::stream)
                    .toList());

    /** One row for each connection. */
    public static final Table<ProgramConnection> CONNECTIONS = Table.plain(
            "program_connections",
            "One row for each connection of the table, in its order.",
            Stream.of(asked(), service(), way()).flatMap(List::stream).toList());

    private AnnualNetworkColumns() {}

    private static List<Column<ProgramConnection>> asked() {
        return List.of(
                Column.text("name", "name", "Name of the connection.", asked(Connection::name)),
                Column.text("vault_from", "vault_from", "Vault where it begins.", asked(Connection::from)),
                Column.text("vault_to", "vault_to", "Vault where it ends.", asked(Connection::to)),
                Column.integer("cables", "cables", "Cables that go together.", asked(Connection::cables)),
                Column.real("value_money", "value", 2, "What serving it is worth, as given.", asked(Connection::value)),
                Column.flag("must", "must", "Whether it is served whatever it costs.", asked(Connection::must)),
                Column.text(
                        "needed_by",
                        "needed_by",
                        "Day by which it is needed, as given.",
                        asked(connection -> connection.neededBy().map(LocalDate::toString))));
    }

    private static List<Column<ProgramConnection>> service() {
        return List.of(
                Column.integer(
                        "served_year",
                        "served_yr",
                        "Year of the program in which it is served first, from 1; empty where it is not served.",
                        row -> row.year().stream().mapToObj(year -> year + 1).findFirst()),
                Column.text(
                        "served_on",
                        "served_on",
                        "First day on which all of its way is there; new ducts are there by the day it is needed, where permits allow, "
                                + "or else on the last day of their year.",
                        row -> row.servedOn().map(LocalDate::toString)),
                Column.flag(
                        "on_time",
                        "on_time",
                        "Whether that is the day by which it is needed or before; empty where it is not served or no day is given.",
                        AnnualNetworkColumns::isOnTime),
                Column.real(
                        "cost_share_money",
                        "cost_share",
                        2,
                        "Its part of the cost: each duct that is recovered or built is paid once, by the connections in it, in "
                                + "proportion to their cables; empty where it is not served.",
                        row -> row.isServed() ? Optional.of(shareMoney(row)) : Optional.empty()));
    }

    private static List<Column<ProgramConnection>> way() {
        return List.of(
                Column.text(
                        "sections",
                        "sections",
                        "Sections on its way, in order, joined by ;.",
                        row -> joined(row.way().stream()
                                .map(step -> step.step().section().id()))),
                Column.text(
                        "recover_spans",
                        "recover",
                        "Spans on its way that have to be recovered, in order, joined by ;.",
                        row -> joined(row.way().stream()
                                .map(ConnectionStep::step)
                                .filter(step -> step.action() == WayStep.Action.RECOVER)
                                .flatMap(step -> step.duct().stream())
                                .map(DuctOffer::spanId))),
                Column.text("why_not", "why_not", "Why it is not served.", ProgramConnection::whyNot),
                Column.text(
                        "takes",
                        "takes",
                        "What it would take to serve it by the day it is needed; empty where that was not calculated.",
                        ProgramConnection::takes));
    }

    private static Optional<Boolean> isOnTime(ProgramConnection row) {
        return row.servedOn().flatMap(served -> row.connection().neededBy().map(needed -> !served.isAfter(needed)));
    }

    private static double shareMoney(ProgramConnection row) {
        return row.way().stream().mapToDouble(ConnectionStep::shareMoney).sum();
    }

    private static String joined(Stream<String> names) {
        return names.collect(Collectors.joining(";"));
    }

    private static Function<ProgramConnection, Object> asked(Function<Connection, Object> cell) {
        return row -> cell.apply(row.connection());
    }
}
