package org.spanroom.bore;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.spanroom.bore.BoreContents.Pipe;
import org.spanroom.bore.BoreContents.Wire;
import org.spanroom.model.bore.PlacedCircle.Kind;

/**
 * One thing that is in a bore, with what is in it.
 *
 * @param outsideDiameterMm the width that it takes up
 * @param insideDiameterMm as in {@link org.spanroom.model.bore.PlacedCircle}
 * @param sleeve cells with one number belong to one sleeve; 0 for what belongs to none
 */
record Item(Kind kind, double outsideDiameterMm, double insideDiameterMm, List<Wire> within, int sleeve) {
    private static final Comparator<Item> BY_CONTENT = Comparator.comparing((Item item) -> item.kind())
            .thenComparingDouble(Item::insideDiameterMm)
            .thenComparing(item -> item.within().toString());

    /** From the widest, as a {@link PackingTask} keeps its circles; equal ones by their sleeves. */
    static final Comparator<Item> WIDEST_FIRST = Comparator.comparingDouble(Item::outsideDiameterMm)
            .reversed()
            .thenComparingInt(Item::sleeve)
            .thenComparing(BY_CONTENT);

    static Item of(Pipe pipe) {
        return new Item(Kind.INNERDUCT, pipe.outsideDiameterMm(), pipe.insideDiameterMm(), pipe.wires(), 0);
    }

    static Item of(Wire wire) {
        return new Item(kind(wire), wire.outsideDiameterMm(), 0, List.of(), 0);
    }

    static Kind kind(Wire wire) {
        return wire.dead() ? Kind.DEAD_CABLE : Kind.CABLE;
    }

    /** A cable in a cell of a sleeve, whose fabric goes around it. */
    static Item inCell(Kind kind, double cableMm, double fabricMm) {
        return new Item(kind, cableMm + 2 * fabricMm, fabricMm > 0 ? cableMm : 0, List.of(), 0);
    }

    /** Returns this as a cell of a sleeve with a number, from 1; with 0 as part of none. */
    Item inSleeve(int number) {
        return new Item(kind, outsideDiameterMm, insideDiameterMm, within, number);
    }

    /**
     * Returns items from the widest, their sleeves numbered from 1 by what they are made of: the same list for the same things,
     * whatever order and numbers they came with.
     */
    static List<Item> inOrder(List<Item> items) {
        Map<Integer, List<Item>> sleeves = new TreeMap<>();
        var ordered = new ArrayList<Item>();
        for (Item item : items) {
            if (item.sleeve() == 0) {
                ordered.add(item);
            } else {
                sleeves.computeIfAbsent(item.sleeve(), number -> new ArrayList<>())
                        .add(item.inSleeve(0));
            }
        }
        sleeves.values().forEach(cells -> cells.sort(WIDEST_FIRST));
        List<List<Item>> groups =
                sleeves.values().stream().sorted(Item::compareSleeves).toList();
        for (int number = 1; number <= groups.size(); number++) {
            for (Item cell : groups.get(number - 1)) {
                ordered.add(cell.inSleeve(number));
            }
        }
        ordered.sort(WIDEST_FIRST);
        return List.copyOf(ordered);
    }

    /** By the widths of the cells first, so that sleeves of the same widths get the same numbers whatever is in them. */
    private static int compareSleeves(List<Item> one, List<Item> other) {
        int compared = Integer.compare(other.size(), one.size());
        for (int i = 0; compared == 0 && i < one.size(); i++) {
            compared = Double.compare(other.get(i).outsideDiameterMm, one.get(i).outsideDiameterMm);
        }
        for (int i = 0; compared == 0 && i < one.size(); i++) {
            compared = BY_CONTENT.compare(one.get(i), other.get(i));
        }
        return compared;
    }
}
