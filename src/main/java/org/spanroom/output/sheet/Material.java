package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanroom.model.Counted;
import org.spanroom.model.effort.CostItem;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.EffortLine;
import org.spanroom.model.effort.MaterialFlow;
import org.spanroom.model.fieldwork.FieldFact;

/**
 * What the crew brings and takes away.
 *
 * @param bring one line
 * @param take one line
 */
record Material(String bring, String take) {
    private static final int MOST_SLEEVES = 6;
    private static final String NOTHING = "nothing is planned";

    static Material of(DuctSheet duct) {
        return duct.effort().map(effort -> of(duct, effort)).orElseGet(() -> new Material(NOTHING, NOTHING));
    }

    private static Material of(DuctSheet duct, Effort effort) {
        MaterialFlow flow = effort.material();
        int sleeves = effort.quantities().sleeves();
        String sleeve = sleeves == 0
                ? "no sleeve"
                : Counted.of(sleeves, "sleeve") + " of " + duct.units().both(flow.sleeveM() / sleeves, 1, "m")
                        + " with the tails at both ends";
        return new Material(
                sleeve + "; lubricant " + duct.units().one(flow.lubricantLiters(), 1, "l") + "; "
                        + Counted.of(flow.bags(), "bag") + "; " + seals(duct)
                        + "; plugs for every mouth that is left open; tags",
                "innerduct " + duct.units().both(flow.innerductKg(), 0, "kg") + " in "
                        + Counted.of(flow.bags(), "bag") + ", " + Counted.of(flow.loads(), "load")
                        + (effort.quantities().deadCablesOut() > 0
                                ? "; " + Counted.of(effort.quantities().deadCablesOut(), "dead cable")
                                : ""));
    }

    private static String seals(DuctSheet duct) {
        return String.format(Locale.ROOT, "%.0f seals", sealsOf(duct));
    }

    static double sealsOf(DuctSheet duct) {
        return duct.work().explained().effortLines().stream()
                .filter(line -> line.part() == CostItem.SEALS)
                .mapToDouble(EffortLine::quantityInUnit)
                .sum();
    }

    /** Returns what was used and taken out, to be weighed, measured and counted. */
    static List<SheetCell> found(DuctSheet duct, SheetBlanks page) {
        return duct.effort().map(effort -> found(duct, effort, page)).orElse(List.of());
    }

    private static List<SheetCell> found(DuctSheet duct, Effort effort, SheetBlanks page) {
        MaterialFlow flow = effort.material();
        var cells = new ArrayList<>(List.of(
                used("Sleeve used", page.of(FieldFact.SLEEVE_USED, "", flow.sleeveM(), 1)),
                used("Lubricant", page.of(FieldFact.LUBRICANT_USED, "", flow.lubricantLiters(), 1)),
                used("Innerduct out", page.of(FieldFact.INNERDUCT_MASS, "", flow.innerductKg(), 1)),
                used("Of it recycled", page.of(FieldFact.RECYCLED_MASS, "", flow.recycledKg(), 1)),
                used("Bags", page.of(FieldFact.BAGS, "", Integer.toString(flow.bags()))),
                used("Loads", page.of(FieldFact.LOADS, "", Integer.toString(flow.loads()))),
                used("Seals", page.of(FieldFact.SEALS_USED, "", sealsOf(duct), 0)),
                used("Persons", page.of(FieldFact.CREW_PERSONS, "")),
                used(
                        "Cost, " + duct.names().fit(duct.book().currency(), 14),
                        page.of(FieldFact.COST, "", duct.work().costMoney().orElseThrow(), 0))));
        int sleeves = Math.min(MOST_SLEEVES, effort.quantities().sleeves());
        if (sleeves > 0) {
            String planned = cellsOfEach(effort);
            var parts = new ArrayList<>(List.of(SheetPart.words(
                    "Cells used" + (planned.isEmpty() ? "" : " (" + planned + " each)") + ", sleeve ")));
            for (int sleeve = 1; sleeve <= sleeves; sleeve++) {
                parts.add(SheetPart.words(sleeve + ": "));
                parts.add(SheetPart.blank(page.of(FieldFact.SLEEVE_CELLS, "sleeve " + sleeve, planned)));
                parts.add(SheetPart.words(" "));
            }
            cells.add(new SheetCell(parts, "", 1));
        }
        return cells;
    }

    /** Returns how many cells each sleeve has; empty where the cells for new cables say nothing of it, since old cables have some. */
    private static String cellsOfEach(Effort effort) {
        int cells = effort.quantities().newCables();
        int sleeves = effort.quantities().sleeves();
        return cells > 0 && cells % sleeves == 0 ? Integer.toString(cells / sleeves) : "";
    }

    private static SheetCell used(String label, SheetBlank blank) {
        String planned = blank.planned().isEmpty() ? "" : " (" + blank.planned() + ")";
        return SheetCell.of(SheetPart.words(label + planned + " "), SheetPart.blank(blank));
    }
}
