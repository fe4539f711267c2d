package org.spanroom.sample;

import java.util.ArrayList;
import java.util.List;

/**
 * Invents ducts that fabric sleeves were laid into: after the innerducts came out, or beside one or two that stayed. How many
 * sleeves a duct of a size takes is common practice, no source.
 */
final class SleeveFiller {
    private static final int CELLS = 3;
    private static final double TWO_SLEEVES_FROM_IN = 2.83;
    private static final double THREE_SLEEVES_FROM_IN = 3.66;
    private static final double WIDEST_IN_CELL_IN = 0.56;

    private final Chance chance;

    SleeveFiller(Chance chance) {
        this.chance = chance;
    }

    Filling fill(Bore bore, String service) {
        boolean beside = bore.insideIn() > THREE_SLEEVES_FROM_IN && chance.happens(0.4);
        List<ListedItem> rows = new ArrayList<>();
        if (beside) {
            innerducts(rows, service);
        } else {
            looseCables(rows, bore, service);
        }
        int most = most(bore);
        sleeves(rows, beside ? 1 : chance.from(Math.max(1, most - 1), most));
        return Filling.listed(Filling.Kind.SLEEVED, rows);
    }

    static int most(Bore bore) {
        return bore.insideIn() < TWO_SLEEVES_FROM_IN ? 1 : bore.insideIn() < THREE_SLEEVES_FROM_IN ? 2 : 3;
    }

    /** One of 1-1/4 in or two of 1 in take less than half of the bores that they are drawn for. */
    private void innerducts(List<ListedItem> rows, String service) {
        boolean two = chance.happens(0.5);
        InnerductSize size = two ? InnerductSize.ONE : InnerductSize.ONE_AND_QUARTER;
        CableSize cable = CableSize.drawFor(size.insideIn(), chance);
        for (int i = 1; i <= (two ? 2 : 1); i++) {
            rows.add(ListedItem.innerduct("I" + i, size, false));
            rows.add(ListedItem.cable("C" + i, "I" + i, cable, service));
        }
    }

    /** The old cables, as they lie since their innerducts came out. */
    private void looseCables(List<ListedItem> rows, Bore bore, String service) {
        CableSize cable = CableSize.drawFor(bore.insideIn() / 3, chance);
        int count = most(bore) == 1 ? 1 : chance.from(1, 3);
        for (int i = 1; i <= count; i++) {
            rows.add(ListedItem.cable("C" + i, "", cable, service));
        }
    }

    /** Cells are filled from the first one on; of the free ones some are promised. */
    private void sleeves(List<ListedItem> rows, int count) {
        List<CableSize> fitting = CableSize.ALL.stream()
                .filter(cable -> cable.outsideIn() <= WIDEST_IN_CELL_IN)
                .toList();
        int cables = rows.size();
        for (int sleeve = 1; sleeve <= count; sleeve++) {
            int used = chance.from(sleeve == 1 ? 1 : 0, CELLS);
            int reserved = chance.happens(0.4) ? Math.min(CELLS - used, chance.from(1, 2)) : 0;
            rows.add(ListedItem.sleeve("S" + sleeve, new ListedItem.Cells(CELLS, reserved)));
            CableSize cable = chance.pick(fitting);
            for (int i = 0; i < used; i++) {
                rows.add(ListedItem.cable("C" + ++cables, "S" + sleeve, cable, "live"));
            }
        }
    }
}
