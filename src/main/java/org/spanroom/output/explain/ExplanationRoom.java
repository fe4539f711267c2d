package org.spanroom.output.explain;

import java.util.stream.IntStream;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.bore.Room;

/** The bends of a span, and the room in its cross-section. */
final class ExplanationRoom {
    private ExplanationRoom() {}

    static ExplanationSection bends(Bends bends) {
        int count = bends.list().size();
        return new ExplanationParts()
                .whole("bend_count", "bends", count)
                .number("bend_total_deg", "in all", bends.total().deg(), 2, "degrees")
                .table(
                        "bends",
                        "",
                        IntStream.range(0, count).boxed().toList(),
                        (row, number) -> bend(
                                row.whole("number", "bend", number + 1),
                                bends.list().get(number)))
                .section("", "Bends");
    }

    private static void bend(ExplanationParts row, Bend bend) {
        row.number("middle_m", "middle", bend.middleM(), 2, "m from A")
                .number("start_m", "start", bend.startM(), 2, "m from A")
                .number("deflection_deg", "deflection", bend.deflection().deg(), 2, "degrees")
                .word("turn", "side", bend.turn())
                .number("radius_m", "radius", bend.radiusM(), 2, "m")
                .flag("radius_assumed", "radius assumed", bend.radiusAssumed())
                .number("arc_length_m", "arc", bend.arcLengthM(), 2, "m");
    }

    static ExplanationSection of(Room room) {
        return new ExplanationParts()
                .number("bore_area_mm2", "bore area", room.boreAreaMm2(), 1, "mm2")
                .number("fill_before_pct", "filled now", 100 * room.fillBeforeRatio(), 2, "%")
                .number("fill_after_pct", "filled by what stays", 100 * room.fillAfterRatio(), 2, "%")
                .number("recoverable_mm2", "area given back", room.recoverableMm2(), 1, "mm2")
                .whole("innerducts_out", "innerducts out", room.innerductsOut())
                .whole("positions_before", "places for a cable now", room.positionsBefore())
                .whole("sleeves", "sleeves in", room.sleeves())
                .whole("new_cables", "places for a cable after", room.newCables())
                .word("binding_rule", "bound by", room.bindingRule())
                .section("room", "Room");
    }
}
