package org.spanroom.output.sheet;

import java.util.List;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.SizeSource;
import org.spanroom.model.network.SpanEnd;

/**
 * The innerducts as they are found at the vaults, where none is pulled: their sizes and colors, and which run uncut through a vault. Where some are
 * pulled, the same is written in the order of pulls.
 */
final class InnerductRows {
    private static final List<SheetHead> HEADS = List.of(
            new SheetHead("Innerduct", 34),
            new SheetHead("By the records", 32),
            new SheetHead("Outside found", 25),
            new SheetHead("Color", 30),
            new SheetHead("Uncut through A", 31),
            new SheetHead("Uncut through B", 31));
    private static final double NAME_ROOM_MM = 30;

    private InnerductRows() {}

    static LongTable<Innerduct> of(DuctSheet duct) {
        return new LongTable<>(
                "Innerducts as found; one that runs uncut through a vault is ring-cut there before anything is pulled",
                "innerducts",
                HEADS,
                duct.work().hasPulls()
                        ? List.of()
                        : duct.span().duct().contents().innerducts(),
                Integer.MAX_VALUE,
                (page, innerduct) -> List.of(row(duct, page, innerduct)));
    }

    private static SheetRow row(DuctSheet duct, SheetBlanks page, Innerduct innerduct) {
        SizeSource source = duct.span().duct().sizeSource(Term.INNERDUCT_OUTSIDE_DIAMETER);
        int decimals = duct.units().shown().decimals(1, "mm");
        return SheetRow.of(
                SheetCell.words(duct.names().fit(innerduct.id(), NAME_ROOM_MM)),
                SheetCell.words(
                        duct.units().one(innerduct.outsideDiameterMm(), 1, "mm") + " " + DuctSheet.spaced(source)),
                SheetCell.of(SheetPart.blank(page.of(
                        FieldFact.INNERDUCT_DIAMETER, innerduct.id(), innerduct.outsideDiameterMm(), decimals))),
                SheetCell.blank(page.of(FieldFact.INNERDUCT_COLOR, innerduct.id(), RecordedMarks.color(innerduct))),
                SheetCell.of(SheetPart.blank(uncut(page, innerduct, SpanEnd.A))),
                SheetCell.of(SheetPart.blank(uncut(page, innerduct, SpanEnd.B))));
    }

    static SheetBlank uncut(SheetBlanks page, Innerduct innerduct, SpanEnd end) {
        Answer recorded = RecordedMarks.uncut(innerduct, end);
        return page.of(
                FieldFact.INNERDUCT_UNCUT,
                innerduct.id() + " " + end.key(),
                recorded == Answer.UNKNOWN ? "" : DuctSheet.spaced(recorded));
    }
}
