package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Stream;
import org.spanroom.model.bore.Positions;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Sleeve;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.ScenarioGains;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of the bore, its contents, and the positions that they leave. */
final class RoomColumns {
    private RoomColumns() {}

    static List<Column<RankedSpan>> all() {
        var columns = new ArrayList<>(bore());
        columns.addAll(gain());
        columns.addAll(positionsNow());
        columns.addAll(positionsAfter());
        columns.add(SpanColumns.SPARE);
        columns.addAll(PackingColumns.all());
        return columns;
    }

    private static List<Column<RankedSpan>> bore() {
        return List.of(
                Column.text(
                        "bore_shape",
                        "bore_shape",
                        CellRange.oneOf(Stream.of(BoreShape.values()).map(RoomColumns::word)),
                        "Shape of the bore: round or square.",
                        duct(d -> word(d.boreShape()))),
                Column.real(
                        "inside_diameter_mm",
                        "inside_mm",
                        2,
                        CellRange.AMOUNT,
                        "Inside diameter of a round bore, side of a square one.",
                        duct(Duct::insideDiameterMm)),
                Column.real(
                        "bore_area_mm2", "bore_mm2", 1, CellRange.AMOUNT, "Area of the bore.", room(Room::boreAreaMm2)),
                Column.real(
                        "fill_now_pct",
                        "fill_now",
                        2,
                        CellRange.NOT_NEGATIVE,
                        "Share of the bore that is filled now: innerducts, treated as solid, and the cables "
                                + "beside them.",
                        room(r -> percent(r.fillNowRatio()))),
                Column.real(
                        "fill_removed_pct",
                        "fill_remov",
                        2,
                        CellRange.NOT_NEGATIVE,
                        "Share of the bore that is filled after removal: innerducts left in place and the "
                                + "cables that stay.",
                        room(r -> percent(r.fillAfterRemovalRatio()))),
                Column.real(
                        "fill_final_pct",
                        "fill_new",
                        2,
                        CellRange.NOT_NEGATIVE,
                        "The same with a design cable in every cell that is a position.",
                        room(r -> percent(r.fillWithNewRatio()))));
    }

    private static List<Column<RankedSpan>> gain() {
        return List.of(
                Column.real(
                        "recoverable_mm2",
                        "recov_mm2",
                        1,
                        CellRange.NUMBER,
                        "Outside area of the removed innerducts minus the area of their cables that stay.",
                        then(PullChoice::recoverableMm2)),
                Column.integer(
                        "innerducts_out",
                        "innerd_out",
                        CellRange.COUNT,
                        "How many rigid innerducts come out.",
                        then(PullChoice::innerductsOut)));
    }

    private static List<Column<RankedSpan>> positionsNow() {
        return List.of(
                SpanColumns.POSITIONS_NOW,
                Column.integer(
                        "positions_now_innerducts",
                        "now_innerd",
                        CellRange.COUNT,
                        "Of these, empty innerducts that can take the design cable.",
                        now(positions -> positions.inInnerducts())),
                Column.integer(
                        "positions_now_sleeves",
                        "now_sleeve",
                        CellRange.COUNT,
                        "Of these, cells of existing sleeves that have no cable and are not reserved.",
                        now(positions -> positions.inSleeves())),
                Column.integer(
                        "positions_now_beside",
                        "now_beside",
                        CellRange.COUNT,
                        "Of these, cells of new sleeves that fit beside the present contents.",
                        now(positions -> positions.beside())),
                Column.integer(
                        "positions_reserved",
                        "pos_reserv",
                        CellRange.COUNT,
                        "Positions of the duct that are promised, as recorded: not counted in positions_now and "
                                + "positions_after.",
                        duct(d -> d.circumstances().positionsReserved())),
                Column.integer(
                        "cells_reserved",
                        "cell_rsrv",
                        CellRange.COUNT,
                        "Cells of existing sleeves that are promised and have no cable yet: not counted as positions.",
                        duct(d -> reservedCells(d.contents()))));
    }

    private static List<Column<RankedSpan>> positionsAfter() {
        return List.of(
                SpanColumns.POSITIONS_AFTER,
                Column.integer(
                        "sleeves",
                        "sleeves",
                        CellRange.COUNT,
                        "Fabric sleeves that are placed after recovery.",
                        room(r -> r.now().map(any -> r.sleeves()))),
                Column.integer(
                        "new_cables",
                        "new_cables",
                        CellRange.COUNT,
                        "Design cables that fit in the cells of those sleeves.",
                        room(r -> r.now().map(any -> r.newCables()))),
                SpanColumns.POSITIONS_GAINED,
                Column.integer(
                        "positions_gained_few",
                        "gain_few",
                        CellRange.WHOLE,
                        "Positions that recovery adds in the scenario few; equal to positions_gained where the "
                                + "contents are recorded, empty where they are unknown.",
                        row -> row.scenarios().map(ScenarioGains::few)),
                Column.integer(
                        "positions_gained_many",
                        "gain_many",
                        CellRange.WHOLE,
                        "Positions that recovery adds in the scenario many.",
                        row -> row.scenarios().map(ScenarioGains::many)),
                Column.text(
                        "binding_rule",
                        "binding",
                        CellRange.KEYS,
                        "The rule that allows no additional sleeve.",
                        room(Room::bindingRule)));
    }

    private static Function<RankedSpan, Object> duct(Function<Duct, Object> cell) {
        return row -> cell.apply(row.span().duct());
    }

    private static Function<RankedSpan, Object> room(Function<Room, Object> cell) {
        return row -> cell.apply(row.assessment().room());
    }

    private static Function<RankedSpan, Object> then(Function<PullChoice, Object> cell) {
        return room(r -> r.then().map(cell));
    }

    private static Function<RankedSpan, Object> now(Function<Positions, Object> cell) {
        return room(r -> r.now().map(PullChoice::positions).map(cell));
    }

    private static OptionalDouble percent(OptionalDouble ratio) {
        return ratio.isPresent() ? OptionalDouble.of(100 * ratio.getAsDouble()) : ratio;
    }

    private static OptionalInt reservedCells(Contents contents) {
        return contents.known()
                ? OptionalInt.of(contents.sleeves().stream()
                        .mapToInt(Sleeve::promisedCells)
                        .sum())
                : OptionalInt.empty();
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
