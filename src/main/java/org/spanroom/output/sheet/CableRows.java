package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Sleeve;
import org.spanroom.model.network.SpanEnd;

/** How each cable is identified before anything is cut, and what is measured of it. */
final class CableRows {
    private static final List<SheetHead> HEADS = List.of(
            new SheetHead("Cable, where", 42),
            new SheetHead("Service", 27),
            new SheetHead("Tag", 23),
            new SheetHead("Method at A", 23.5),
            new SheetHead("Method at B", 23.5),
            new SheetHead("Light before", 22),
            new SheetHead("Light after", 22));
    private static final double NAME_ROOM_MM = 40;
    private static final double TAG_ROOM_MM = 20;

    private CableRows() {}

    /** A cable with the name of what holds it. */
    private record Held(Cable cable, String in) {}

    static LongTable<?> of(DuctSheet duct) {
        return new LongTable<>(
                "Identify each cable at both ends before cutting: by its tag and by a second, independent method",
                "cables",
                HEADS,
                held(duct.span().duct().contents()),
                Integer.MAX_VALUE,
                (page, held) -> rows(duct, page, held));
    }

    private static List<Held> held(Contents contents) {
        var all = new ArrayList<Held>();
        for (Innerduct innerduct : contents.innerducts()) {
            innerduct.cables().forEach(cable -> all.add(new Held(cable, innerduct.id())));
        }
        for (Sleeve sleeve : contents.sleeves()) {
            sleeve.cables().forEach(cable -> all.add(new Held(cable, sleeve.id())));
        }
        contents.looseCables().forEach(cable -> all.add(new Held(cable, "loose")));
        return all;
    }

    private static List<SheetRow> rows(DuctSheet duct, SheetBlanks page, Held held) {
        Cable cable = held.cable();
        String tag = RecordedMarks.tag(cable);
        var rows = new ArrayList<SheetRow>();
        rows.add(SheetRow.of(
                SheetCell.words(duct.names().fit(cable.id() + ", " + held.in(), NAME_ROOM_MM)),
                SheetCell.of(SheetPart.blank(page.of(FieldFact.CABLE_SERVICE, cable.id(), planned(cable)))),
                tag.isBlank()
                        ? SheetCell.blank(page.of(FieldFact.CABLE_TAG, cable.id()))
                        : SheetCell.of(
                                SheetPart.strong(duct.names().fitBold(tag, TAG_ROOM_MM, 9)),
                                SheetPart.blank(page.of(FieldFact.CABLE_TAG, cable.id(), tag))),
                method(page, cable, SpanEnd.A),
                method(page, cable, SpanEnd.B),
                SheetCell.blank(page.of(FieldFact.LIGHT_BEFORE, cable.id())),
                SheetCell.blank(page.of(FieldFact.LIGHT_AFTER, cable.id()))));
        if (DuctSheet.isLive(cable)) {
            return rows;
        }
        rows.add(SheetRow.of(SheetCell.of(
                        SheetPart.words("dead by the records: proved dead before cutting by "),
                        SheetPart.blank(page.of(FieldFact.CABLE_PROVED_DEAD_BY, cable.id())),
                        SheetPart.words(" taken out "),
                        SheetPart.blank(page.of(FieldFact.CABLE_OUT, cable.id())))
                .over(HEADS.size())));
        return rows;
    }

    private static SheetCell method(SheetBlanks page, Cable cable, SpanEnd end) {
        return SheetCell.blank(page.of(FieldFact.CABLE_IDENTIFIED_BY, cable.id() + " " + end.key()));
    }

    private static String planned(Cable cable) {
        return cable.service() == Service.UNKNOWN ? "" : DuctSheet.spaced(cable.service());
    }
}
