package org.spanroom.output.explain;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.Positions;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;

/** The bends of a span, and the room in its cross-section. */
final class ExplanationRoom {
    private ExplanationRoom() {}

    static ExplanationSection bends(Bends bends) {
        int count = bends.list().size();
        return new ExplanationParts()
                .whole("bend_count", "bends", count)
                .number("bend_total_deg", "total", bends.total().deg(), 2, "degrees")
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

    /** @param contentsKnown whether it is recorded or assumed what lies in the duct */
    static ExplanationSection of(Room room, boolean contentsKnown) {
        var parts = new ExplanationParts()
                .number("bore_area_mm2", "bore area", room.boreAreaMm2(), 1, "mm2")
                .number("fill_now_pct", "filled now", percent(room.fillNowRatio()), 2, "%")
                .number("fill_removed_pct", "filled after removal", percent(room.fillAfterRemovalRatio()), 2, "%")
                .number("fill_final_pct", "filled with new cables", percent(room.fillWithNewRatio()), 2, "%")
                .number(
                        "recoverable_mm2",
                        "area recovered",
                        room.then().map(PullChoice::recoverableMm2).orElse(Double.NaN),
                        1,
                        "mm2");
        now(parts, room);
        parts.whole("innerducts_out", "innerducts out", number(room.then(), PullChoice::innerductsOut))
                .whole("sleeves", "sleeves in", number(room.now(), any -> room.sleeves()))
                .whole("new_cables", "new cables in sleeves", number(room.now(), any -> room.newCables()))
                .whole("positions_after", "positions after", room.positionsAfter())
                .whole("positions_gained", "gained by recovery", room.positionsGained())
                .word("binding_rule", "limited by", room.bindingRule())
                .text("proposal_reason", "why some innerducts stay", room.proposalReason());
        choices(parts, room);
        String unknown = contentsKnown
                ? "Room: unknown because the duct holds more than a cross-section is calculated for"
                : "Room: unknown because the contents are unknown";
        return parts.section("room", room.now().isPresent() ? "Room" : unknown);
    }

    private static void now(ExplanationParts parts, Room room) {
        parts.whole("positions_now", "positions now", room.positionsNow());
        Optional<Positions> now = room.now().map(PullChoice::positions);
        parts.whole("positions_now_innerducts", "in empty innerducts", number(now, Positions::inInnerducts))
                .whole("positions_now_sleeves", "in existing sleeves", number(now, Positions::inSleeves))
                .whole("positions_now_beside", "beside the contents", number(now, Positions::beside))
                .whole("positions_reserved", "of these reserved", number(now, Positions::reserved));
    }

    private static void choices(ExplanationParts parts, Room room) {
        parts.table("choices", "Choices, starting with no removal", room.choices(), (row, choice) -> {
            row.text("choice", "choice", choice.words())
                    .flag(
                            "proposed",
                            "proposed",
                            room.proposal().filter(choice::equals).isPresent())
                    .flag("allowed", "allowed", choice.allowed())
                    .whole("positions", "positions", choice.positionsAfter())
                    .whole("positions_gained", "gained", choice.positionsGained())
                    .whole("sleeves", "sleeves", choice.sleeves())
                    .number("fill_pct", "filled", 100 * choice.fillRatio(), 1, "%")
                    .number("fill_final_pct", "with new", 100 * choice.fillWithNewRatio(), 1, "%")
                    .word("binding_rule", "limited by", choice.bindingRule())
                    .text(
                            "next_sleeve",
                            "",
                            choice.nextSleeve().map(PackingOutcome::key).orElse(""));
        });
    }

    private static double percent(OptionalDouble ratio) {
        return 100 * ratio.orElse(Double.NaN);
    }

    private static <T> OptionalInt number(Optional<T> of, ToIntFunction<T> number) {
        return of.isPresent() ? OptionalInt.of(number.applyAsInt(of.get())) : OptionalInt.empty();
    }
}
