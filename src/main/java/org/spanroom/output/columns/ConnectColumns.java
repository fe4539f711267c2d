package org.spanroom.output.columns;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import org.spanroom.model.Line;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.ConnectionResult;
import org.spanroom.model.program.ConnectionStep;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.Way;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of what {@code connect} finds: one row for each connection, and one for each section on its way. */
public final class ConnectColumns {
    /** One row for each connection. */
    public static final Table<ConnectionRow> CONNECTIONS = Table.layer(
            "connections",
            "One row for each connection of the table, in its order.",
            GeometryKind.LINE,
            row -> row.result().findWay().map(CorridorColumns::joined).orElse(Shape.EMPTY),
            List.of(
                    Column.text("name", "name", "Name of the connection.", asked(Connection::name)),
                    Column.text("vault_from", "vault_from", "Vault where it begins.", asked(Connection::from)),
                    Column.text("vault_to", "vault_to", "Vault where it ends.", asked(Connection::to)),
                    Column.integer("cables", "cables", "Cables that go together.", asked(Connection::cables)),
                    Column.real(
                            "value_money", "value", 2, "What serving it is worth, as given.", asked(Connection::value)),
                    Column.text(
                            "needed_by",
                            "needed_by",
                            "Day by which it is needed, as given.",
                            asked(connection -> connection.neededBy().map(LocalDate::toString))),
                    Column.flag("must", "must", "Whether it is served whatever it costs.", asked(Connection::must)),
                    Column.flag(
                            "served",
                            "served",
                            "Whether it is served.",
                            row -> row.result().isServed()),
                    Column.real("length_m", "length_m", 3, "Length of its way.", way(Way::lengthM)),
                    Column.integer(
                            "sections",
                            "sections",
                            "How many sections it passes.",
                            way(way -> way.steps().size())),
                    Column.real(
                            "cost_share_money",
                            "cost_share",
                            2,
                            "Its part of the cost: each duct that is recovered or built is paid once, by the connections in it, in "
                                    + "proportion to their cables.",
                            served(ConnectionResult::shareMoney)),
                    Column.text(
                            "shared_with",
                            "shared",
                            "Connections that pay with it for a duct, joined by ;.",
                            row -> String.join(";", row.result().sharedWith())),
                    Column.text(
                            "binding_section",
                            "binding",
                            "Section on its way in whose widest duct the fewest cables can go together without new build.",
                            way(way -> way.binding().section().id())),
                    Column.text(
                            "earliest_day",
                            "earliest",
                            "First day on which the last of its work can begin: permits are issued and no embargo applies.",
                            row -> row.result()
                                    .findWay()
                                    .map(way ->
                                            way.earliest(row.network().onDate()).toString())),
                    Column.flag(
                            "on_time",
                            "on_time",
                            "Whether that is the day by which it is needed or before; empty where no day is given.",
                            row -> row.result().isOnTime(row.network().onDate())),
                    Column.real(
                            "feasible_chance_pct",
                            "feas_pct",
                            1,
                            "Chance that every recovery on its way works: the share of the first 64 samples of the simulation in which "
                                    + "all do; empty where that was not simulated.",
                            row -> row.result()
                                    .findWay()
                                    .map(way -> way.feasibleRatio(row.network().samples()))
                                    .filter(OptionalDouble::isPresent)
                                    .map(ratio -> 100 * ratio.getAsDouble())),
                    Column.text(
                            "why_not",
                            "why_not",
                            "Why it is not served.",
                            row -> row.result().whyNot()),
                    Column.real(
                            "least_money",
                            "least_mon",
                            2,
                            "What serving it would cost at least in addition; empty where it is served or cannot be.",
                            row -> row.result().isServed()
                                            || Double.isInfinite(row.result().leastMoney())
                                    ? Optional.empty()
                                    : Optional.of(row.result().leastMoney()))));

    /** One row for each section on the way of a connection. */
    public static final Table<SectionRow> SECTIONS = Table.layer(
            "connection_sections",
            "One row for each section on the way of each connection, in the order of the way.",
            GeometryKind.LINE,
            row -> line(row.found()).map(Shape::line).orElse(Shape.EMPTY),
            List.of(
                    Column.text("name", "name", "Name of the connection.", SectionRow::name),
                    Column.integer("place", "place", "Place of the section on its way, from 1.", SectionRow::place),
                    Column.text(
                            "section_id",
                            "section_id",
                            "Name of the section.",
                            row -> row.found().step().section().id()),
                    Column.text(
                            "vault_from",
                            "vault_from",
                            "Vault where the way enters it.",
                            row -> row.network().vaultId(row.found().step().from())),
                    Column.text(
                            "vault_to",
                            "vault_to",
                            "Vault where the way leaves it.",
                            row -> row.network().vaultId(row.found().step().to())),
                    Column.text(
                            "action",
                            "action",
                            "free: positions that are free today are used; recover: the duct is recovered first; build: a new duct is built.",
                            row -> row.found().step().action().key()),
                    Column.text(
                            "span_id",
                            "span_id",
                            "Span whose duct takes the cables; empty for a new duct.",
                            row -> row.found().step().duct().map(DuctOffer::spanId)),
                    Column.integer(
                            "new_duct",
                            "new_duct",
                            "Number of the new duct in its section; empty where none takes the cables.",
                            row -> row.found().newDuct() > 0
                                    ? OptionalInt.of(row.found().newDuct())
                                    : OptionalInt.empty()),
                    Column.integer(
                            "rank",
                            "rank",
                            "Rank of the span in the run.",
                            row -> row.found()
                                    .step()
                                    .duct()
                                    .map(DuctOffer::rank)
                                    .orElse(OptionalInt.empty())),
                    Column.integer(
                            "cables_in_duct",
                            "cables_in",
                            "New cables in that duct, of all connections.",
                            row -> row.found().cablesInDuct()),
                    Column.real(
                            "duct_cost_money",
                            "duct_cost",
                            2,
                            "Cost of that duct, paid once for all connections in it; do not add it up over connections.",
                            row -> row.found().cost().money()),
                    Column.real(
                            "cost_share_money",
                            "cost_share",
                            2,
                            "The part of this connection in it.",
                            row -> row.found().shareMoney()),
                    Column.text(
                            "shared_with",
                            "shared",
                            "Other connections in that duct, joined by ;.",
                            row -> String.join(";", row.found().sharedWith())),
                    Column.text(
                            "earliest_day",
                            "earliest",
                            "First day on which its work can begin.",
                            row -> row.found()
                                    .step()
                                    .earliest(row.network().onDate())
                                    .toString())));

    private ConnectColumns() {}

    /** A connection and its network. */
    public record ConnectionRow(ConnectionResult result, DuctNetwork network) {}

    /** A section on the way of a connection. */
    public record SectionRow(String name, int place, ConnectionStep found, DuctNetwork network) {}

    private static Function<ConnectionRow, Object> asked(Function<Connection, Object> cell) {
        return row -> cell.apply(row.result().connection());
    }

    private static Function<ConnectionRow, Object> served(Function<ConnectionResult, Object> cell) {
        return row -> row.result().isServed() ? cell.apply(row.result()) : Optional.empty();
    }

    private static Function<ConnectionRow, Object> way(Function<Way, Object> cell) {
        return row -> row.result().findWay().map(cell);
    }

    private static Optional<Line> line(ConnectionStep found) {
        return found.step().section().lonLat().map(line -> found.step().forward() ? line : line.reversed());
    }
}
