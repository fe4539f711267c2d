package org.spanroom.model.program;

import java.util.List;

/**
 * One section on the way of a connection.
 *
 * @param step how the cables get through
 * @param newDuct number of the new duct among those built in the section, from 1; 0 where none takes the cables
 * @param cost what the duct that takes the cables costs; paid once for all connections in it
 * @param shareMoney the part of this connection, by its cables
 * @param sharedWith names of the other connections in the same duct
 * @param cablesInDuct new cables in that duct, of all connections
 */
public record ConnectionStep(
        WayStep step, int newDuct, Costs cost, double shareMoney, List<String> sharedWith, int cablesInDuct) {
    public ConnectionStep {
        sharedWith = List.copyOf(sharedWith);
    }
}
