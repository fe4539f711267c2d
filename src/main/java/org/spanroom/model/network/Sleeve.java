package org.spanroom.model.network;

import java.util.List;
import org.spanroom.model.Check;

/**
 * A fabric sleeve that is in a duct: one piece with cells side by side, each of which takes one cable.
 *
 * @param cells how many cells it has
 * @param reservedCells how many of them are promised to the owner or to a customer, and hold no cable yet
 * @param cables those that are in its cells; more than it has cells where the records say so
 */
public record Sleeve(String id, int cells, int reservedCells, List<Cable> cables) {
    public Sleeve {
        Check.positive("cells", cells);
        Check.notNegative("reservedCells", reservedCells);
        cables = List.copyOf(cables);
    }

    /** Returns the same sleeve with other cables in it. */
    public Sleeve holding(List<Cable> others) {
        return new Sleeve(id, cells, reservedCells, others);
    }

    /** Returns how many cells hold no cable and are promised to none: positions now. */
    public int freeCells() {
        return Math.max(0, cells - cables.size() - reservedCells);
    }

    /** Returns how many cells hold no cable and are promised: no more than are empty. */
    public int promisedCells() {
        return Math.min(reservedCells, Math.max(0, cells - cables.size()));
    }
}
