package org.spanroom.output.sheet;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.network.SpanEnd;

/** The bends as they are met from the pulling end. */
final class BendRows {
    private static final List<SheetHead> HEADS = List.of(
            new SheetHead("Bend", 12),
            new SheetHead("Middle from the pulling end", 60),
            new SheetHead("Turn", 50),
            new SheetHead("Radius", 61));

    private BendRows() {}

    static LongTable<Bend> of(DuctSheet duct) {
        List<Bend> bends = duct.work().explained().assessment().bends().list();
        List<Bend> met = bends.stream()
                .sorted(Comparator.comparingDouble(bend -> fromM(duct, bend)))
                .toList();
        return new LongTable<>(
                "Bends from the pulling end " + duct.pullingEnd() + " (" + duct.words("bend_count") + ", "
                        + String.format(
                                Locale.ROOT,
                                "%.0f° in total)",
                                duct.work()
                                        .explained()
                                        .assessment()
                                        .bends()
                                        .total()
                                        .deg()),
                "bends",
                HEADS,
                met,
                Integer.MAX_VALUE,
                (page, bend) -> List.of(row(duct, met.indexOf(bend) + 1, bend)));
    }

    private static double fromM(DuctSheet duct, Bend bend) {
        return duct.pullingEnd() == SpanEnd.A ? bend.middleM() : duct.span().drawnLengthM() - bend.middleM();
    }

    private static SheetRow row(DuctSheet duct, int number, Bend bend) {
        return SheetRow.of(
                SheetCell.words(Integer.toString(number)),
                SheetCell.words(duct.units().both(Math.max(0, fromM(duct, bend)), 1, "m")),
                SheetCell.words(String.format(
                        Locale.ROOT, "%.0f\u00b0 to the %s", bend.deflection().deg(), side(duct, bend))),
                SheetCell.words(duct.units().both(bend.radiusM(), 1, "m") + (bend.radiusAssumed() ? " assumed" : "")));
    }

    /** A turn to the left is one to the right when it is met from the other end. */
    private static String side(DuctSheet duct, Bend bend) {
        boolean left = bend.turn() == Bend.Turn.LEFT;
        return left == (duct.pullingEnd() == SpanEnd.A) ? "left" : "right";
    }
}
