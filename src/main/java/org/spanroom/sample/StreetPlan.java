package org.spanroom.sample;

import java.util.List;

/**
 * The streets of one district.
 *
 * @param streets in the order in which ducts are laid
 * @param gates the vaults that links to other districts start from
 */
record StreetPlan(List<Node> nodes, List<Street> streets, Gates gates) {
    /** The outermost vaults of the main streets. */
    record Gates(Node west, Node east, Node south, Node north) {}

    StreetPlan {
        nodes = List.copyOf(nodes);
        streets = List.copyOf(streets);
    }
}
