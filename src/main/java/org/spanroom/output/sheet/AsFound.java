package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.spanroom.model.Term;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.SpanEnd;

/** What is not as the records say, and how the work ended. */
final class AsFound {
    private static final int MOST_SLEEVES = 4;

    private AsFound() {}

    static List<SheetCell> differences(DuctSheet duct, SheetBlanks page) {
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
        cells.add(cell(
                "Flooded",
                page.of(FieldFact.DUCT_FLOODED, "", recorded.flooded() ? "yes" : "no")));
        for (SpanEnd end : SpanEnd.values()) {
            cells.add(cell("Blocked from " + end + " at", page.of(FieldFact.BLOCKED_AT, end.key())));
        }
        for (SpanEnd end : SpanEnd.values()) {
            cells.add(slack(duct, page, end));
        }
        return cells;
    }

    static List<SheetCell> condition(DuctSheet duct, SheetBlanks page) {
        Condition recorded = duct.span().duct().condition();
        String planned = recorded == Condition.UNKNOWN ? "" : DuctSheet.spaced(recorded);
        String words = planned.isEmpty() ? VaultWords.NOT_RECORDED : planned;
        return List.of(
                cell("Condition " + words + ", found", page.of(FieldFact.DUCT_CONDITION, "", planned)),
                cell("Other", page.of(FieldFact.NOT_AS_RECORDED, "")));
    }

    static List<SheetCell> sleeves(DuctSheet duct, SheetBlanks page) {
        int sleeves = Math.min(
                MOST_SLEEVES,
                duct.effort().map(effort -> effort.quantities().sleeves()).orElse(0));
        var cells = new ArrayList<SheetCell>();
        for (int sleeve = 1; sleeve <= sleeves; sleeve++) {
            cells.add(cell("Sleeve " + sleeve + ", cells", page.of(FieldFact.SLEEVE_CELLS, "sleeve " + sleeve)));
        }
        return cells;
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
