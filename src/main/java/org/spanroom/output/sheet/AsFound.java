package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.SpanEnd;

/** What is not as the records say, and how the work ended. */
final class AsFound {
    private static final int MOST_INNERDUCTS = 6;
    private static final double NAME_ROOM_MM = 24;

    private AsFound() {}

    static List<SheetCell> all(DuctSheet duct, SheetBlanks page) {
        Duct recorded = duct.span().duct();
        boolean known = recorded.contents().known();
        int decimals = duct.units().shown().decimals(1, "mm");
        var cells = new ArrayList<SheetCell>();
        cells.add(cell(
                "Bore " + duct.units().one(recorded.insideDiameterMm(), 1, "mm") + " "
                        + DuctSheet.spaced(recorded.sizeSource(Term.INSIDE_DIAMETER)) + ", found",
                page.of(FieldFact.BORE_DIAMETER, "", recorded.insideDiameterMm(), decimals)));
        cells.add(cell(
                "Innerducts " + count(known, recorded.contents().innerducts().size()) + ", found",
                page.of(
                        FieldFact.INNERDUCTS_FOUND,
                        "",
                        planned(known, recorded.contents().innerducts().size()))));
        cells.add(cell(
                "Cables " + count(known, duct.cables().size()) + ", found",
                page.of(FieldFact.CABLES_FOUND, "", planned(known, duct.cables().size()))));
        cells.add(cell("Flooded", page.of(FieldFact.DUCT_FLOODED, "", recorded.flooded() ? "yes" : "no")));
        for (SpanEnd end : SpanEnd.values()) {
            cells.add(cell("Blocked from " + end + " at", page.of(FieldFact.BLOCKED_AT, end.key())));
        }
        for (SpanEnd end : SpanEnd.values()) {
            cells.add(slack(duct, page, end));
        }
        if (duct.work().hasPulls()) {
            recorded.contents().innerducts().stream()
                    .limit(MOST_INNERDUCTS)
                    .forEach(innerduct -> cells.add(size(duct, page, innerduct)));
        }
        cells.add(condition(recorded.condition(), page));
        cells.add(cell("Other", page.of(FieldFact.NOT_AS_RECORDED, "")));
        return cells;
    }

    private static SheetCell size(DuctSheet duct, SheetBlanks page, Innerduct innerduct) {
        int decimals = duct.units().shown().decimals(1, "mm");
        return cell(
                duct.names().fit(innerduct.id(), NAME_ROOM_MM) + " "
                        + duct.units().one(innerduct.outsideDiameterMm(), 1, "mm") + ", found",
                page.of(FieldFact.INNERDUCT_DIAMETER, innerduct.id(), innerduct.outsideDiameterMm(), decimals));
    }

    private static SheetCell condition(Condition recorded, SheetBlanks page) {
        String planned = recorded == Condition.UNKNOWN ? "" : DuctSheet.spaced(recorded);
        String words = planned.isEmpty() ? VaultWords.NOT_RECORDED : planned;
        return cell("Condition " + words + ", found", page.of(FieldFact.DUCT_CONDITION, "", planned));
    }

    static List<SheetCell> end(SheetBlanks page) {
        return List.of(
                cell("Status", page.of(FieldFact.STATUS, "")),
                cell("Why stopped", page.of(FieldFact.STATUS_REASON, "")),
                cell("Signed by", page.of(FieldFact.SIGNED_BY, "")));
    }

    private static SheetCell slack(DuctSheet duct, SheetBlanks page, SpanEnd end) {
        OptionalDouble recordedM = RecordedMarks.slackM(duct.span(), end);
        int decimals = duct.units().shown().decimals(1, "m");
        String planned = recordedM.isPresent()
                ? duct.units().planned(FieldFact.CABLE_SLACK_FOUND.kind(), recordedM.getAsDouble(), decimals)
                : "";
        return cell(
                "Slack at " + end + (planned.isEmpty() ? "" : " (" + planned + ")"),
                page.of(FieldFact.CABLE_SLACK_FOUND, end.key(), planned));
    }

    private static String count(boolean known, int count) {
        return known ? Integer.toString(count) : VaultWords.NOT_RECORDED;
    }

    private static String planned(boolean known, int count) {
        return known ? Integer.toString(count) : "";
    }

    private static SheetCell cell(String label, SheetBlank blank) {
        return SheetCell.of(SheetPart.words(label + " "), SheetPart.blank(blank));
    }
}
