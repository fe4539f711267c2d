package org.spanroom.output.sheet;

import java.util.List;
import org.spanroom.model.network.Innerduct;

/** What the second page of a duct has room for: its cables first, then its innerducts; what is then left makes their rows taller. */
final class BackRoom {
    private static final double HALF_MM = 88;
    private static final double PICTURE_MM = 41;
    private static final double LIST_MM = 178;
    private static final double MOST_TALLER_MM = 1.5;
    private static final double BETWEEN_MM = -3;

    private final LongTable<?> cables;
    private final LongTable<Innerduct> innerducts;
    private final double rowMm;

    BackRoom(DuctSheet duct, SheetTable steps, CrossSections crossSections, Material material) {
        var budget = new PageBudget(duct.book().paper(), DuctBands.of(duct).size());
        budget.take(Math.max(leftMm(steps), rightMm(crossSections, material)) + 1)
                .take(fixedMm(duct))
                .take(PageBudget.headMm(true) + PageBudget.linesMm(1));
        int ducts = InnerductRows.of(duct).items().size();
        // Of either at least a row is there, so both heads.
        double innerductsHeadMm = ducts == 0 ? 0 : PageBudget.headMm(true) + PageBudget.rowsMm(1);
        budget.take(innerductsHeadMm);
        boolean anyDead = duct.cables().stream().anyMatch(cable -> !DuctSheet.isLive(cable));
        double cableMm = PageBudget.rowsMm(anyDead ? 2 : 1);
        LongTable<?> allCables = CableRows.of(duct);
        int cablesShown = Math.min(allCables.items().size(), budget.count(cableMm));
        cables = allCables.upTo(fitting(allCables.items().size(), cablesShown));
        budget.take(cableMm * Math.max(1, cablesShown));
        int innerductsShown =
                Math.min(ducts, 1 + Math.max(0, (int) Math.floor(budget.freeMm() / PageBudget.rowsMm(1))));
        innerducts = InnerductRows.of(duct).upTo(fitting(ducts, innerductsShown));
        budget.take(PageBudget.rowsMm(Math.max(0, innerductsShown - 1)));
        int rows = steps.rows().size() + cablesShown * (anyDead ? 2 : 1) + innerductsShown;
        rowMm = budget.rowMm(rows, MOST_TALLER_MM);
    }

    /** Where not all fit, one row says so. */
    private static int fitting(int all, int shown) {
        return shown < all ? Math.max(1, shown - 1) : all;
    }

    private static double leftMm(SheetTable steps) {
        return steps.isEmpty()
                ? PageBudget.linesMm(1)
                : PageBudget.headMm(true) + PageBudget.rowsMm(steps.rows().size()) + PageBudget.linesMm(1);
    }

    private static double rightMm(CrossSections crossSections, Material material) {
        double drawnMm = crossSections.pictures().stream()
                .mapToDouble(picture -> picture.drawing().heightMm())
                .max()
                .orElse(0);
        double captionMm = crossSections.pictures().stream()
                .mapToDouble(
                        picture -> PageBudget.textMm(List.of(picture.title() + ": " + picture.caption()), PICTURE_MM))
                .max()
                .orElse(0);
        return captionMm
                + drawnMm
                + PageBudget.textMm(
                        List.of(
                                DuctBack.LEGEND,
                                "Bring: " + material.bring(),
                                "Take away: " + material.take(),
                                DuctBack.BEFORE),
                        HALF_MM);
    }

    private static double fixedMm(DuctSheet duct) {
        var scratch = new SheetBlanks(duct.units(), duct.span().id());
        return PageBudget.boxMm(DuctBack.AS_FOUND, AsFound.all(duct, scratch))
                + PageBudget.boxMm(DuctBack.USED, Material.found(duct, scratch))
                + PageBudget.boxMm(DuctBack.END, AsFound.end(scratch))
                + PageBudget.textMm(DuctBack.sentences(duct), LIST_MM)
                + BETWEEN_MM;
    }

    LongTable<?> cables() {
        return cables;
    }

    LongTable<Innerduct> innerducts() {
        return innerducts;
    }

    double rowMm() {
        return rowMm;
    }
}
