package org.spanroom.output.sheet;

import java.util.List;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.pull.InnerductPull;

/** What the first page of a duct has room for: its pulls first, then its bends; what is then left makes the rows of pulls taller. */
final class FrontRoom {
    private static final int ROWS_OF_A_PULL = 3;
    private static final int LEAST_BENDS = 2;
    private static final double WIDTH_MM = 183;
    private static final double BOX_MM = 176;
    private static final double CARD_MM = 88;
    private static final double STOP_EDGES_MM = 5.4;
    private static final double STALL_EDGES_MM = 2.7;
    private static final double FACES_MM = 13.5;
    private static final double MOST_TALLER_MM = 2.2;
    private static final double BETWEEN_MM = 0.5;

    private final LongTable<InnerductPull> pulls;
    private final LongTable<Bend> bends;
    private final double rowMm;

    FrontRoom(DuctSheet duct, StopBox stop, List<VaultCard> vaults, SheetTable permits, String ductWords) {
        var budget = new PageBudget(duct.book().paper(), DuctBands.of(duct).size());
        budget.take(stopMm(duct, stop))
                .take(PageBudget.textMm(List.of(DuctFront.STALL), BOX_MM) + STALL_EDGES_MM)
                .take(cardsMm(vaults))
                .take(
                        permits.isEmpty()
                                ? 0
                                : PageBudget.headMm(true)
                                        + PageBudget.rowsMm(permits.rows().size() - 1))
                .take(PageBudget.textMm(List.of("Duct: " + ductWords), WIDTH_MM))
                .take(FACES_MM + BETWEEN_MM);
        LongTable<InnerductPull> allPulls = PullRows.of(duct);
        LongTable<Bend> allBends = BendRows.of(duct);
        int bendCount = allBends.items().size();
        double bendsHeadMm = bendCount == 0 ? PageBudget.linesMm(1) : PageBudget.headMm(true);
        budget.take(bendsHeadMm + PageBudget.rowsMm(Math.min(bendCount, LEAST_BENDS + 1)));
        budget.take(allPulls.items().isEmpty() ? PageBudget.linesMm(2) : PageBudget.headMm(true));
        double pullMm = PageBudget.rowsMm(ROWS_OF_A_PULL);
        int all = allPulls.items().size();
        int fit = budget.count(pullMm);
        // Where not all fit, one row says so.
        int shown =
                all <= fit ? all : Math.max(1, budget.take(PageBudget.rowsMm(1)).count(pullMm));
        pulls = allPulls.upTo(shown);
        budget.take(pullMm * shown);
        int bendsFit = LEAST_BENDS + 1 + Math.max(0, (int) Math.floor(budget.freeMm() / PageBudget.rowsMm(1)));
        int bendsShown = bendCount <= bendsFit ? bendCount : bendsFit - 1;
        bends = allBends.upTo(bendsShown);
        budget.take(PageBudget.rowsMm(Math.max(0, Math.min(bendCount, bendsFit) - LEAST_BENDS - 1)));
        rowMm = budget.rowMm(ROWS_OF_A_PULL * shown, MOST_TALLER_MM);
    }

    private static double stopMm(DuctSheet duct, StopBox stop) {
        double tableMm = PageBudget.headMm(false)
                + PageBudget.rowsMm(stop.limits().rows().size());
        double wrapsMm = PageBudget.linesMm(stop.longRows());
        int moveLines = PageBudget.inlineLines(
                DuctFront.MOVEMENT,
                StopBox.movements(duct)
                        .first(new SheetBlanks(duct.units(), duct.span().id()))
                        .rows()
                        .stream()
                        .flatMap(row -> row.cells().stream())
                        .toList(),
                BOX_MM);
        return STOP_EDGES_MM
                + tableMm
                + wrapsMm
                + PageBudget.linesMm(2 + moveLines + (stop.expected().isEmpty() ? 0 : 1))
                + (stop.pause().isEmpty() ? 0 : PageBudget.textMm(List.of(stop.pause()), BOX_MM))
                + PageBudget.textMm(stop.rules(), BOX_MM - 6);
    }

    private static double cardsMm(List<VaultCard> vaults) {
        return PageBudget.linesMm(1)
                + 1.4
                + vaults.stream()
                        .mapToDouble(card -> PageBudget.textMm(card.lines(), CARD_MM))
                        .max()
                        .orElse(0);
    }

    LongTable<InnerductPull> pulls() {
        return pulls;
    }

    LongTable<Bend> bends() {
        return bends;
    }

    double rowMm() {
        return rowMm;
    }
}
