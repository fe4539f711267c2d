package org.spanroom.bore;

import java.util.Comparator;
import java.util.List;
import org.spanroom.bore.BoreContents.Pipe;
import org.spanroom.bore.BoreContents.Wire;
import org.spanroom.model.bore.PlacedCircle.Kind;

/**
 * One thing that lies in a bore, with what lies in it.
 *
 * @param outsideDiameterMm the width that it takes up
 * @param insideDiameterMm as in {@link org.spanroom.model.bore.PlacedCircle}
 */
record Item(Kind kind, double outsideDiameterMm, double insideDiameterMm, List<Wire> within) {
    /** From the widest, as a {@link PackingTask} keeps its circles. */
    static final Comparator<Item> WIDEST_FIRST = Comparator.comparingDouble(Item::outsideDiameterMm)
            .reversed()
            .thenComparing(Item::kind)
            .thenComparingDouble(Item::insideDiameterMm)
            .thenComparing(item -> item.within().toString());

    static Item of(Pipe pipe) {
        return new Item(Kind.INNERDUCT, pipe.outsideDiameterMm(), pipe.insideDiameterMm(), pipe.wires());
    }

    static Item of(Wire wire) {
        return new Item(kind(wire), wire.outsideDiameterMm(), 0, List.of());
    }

    static Kind kind(Wire wire) {
        return wire.dead() ? Kind.DEAD_CABLE : Kind.CABLE;
    }

    /** A cable in a cell of a sleeve, whose fabric goes round it. */
    static Item inCell(Kind kind, double cableMm, double fabricMm) {
        return new Item(kind, cableMm + 2 * fabricMm, fabricMm > 0 ? cableMm : 0, List.of());
    }
}
