package org.spanroom.pipeline;

import java.util.List;
import java.util.function.BooleanSupplier;
import org.spanroom.bore.RoomAssessor;
import org.spanroom.input.InputReader;
import org.spanroom.model.network.Route;

/**
 * Calculates the room in ducts, which the assessor remembers, while the reading waits for the zones, whose reference system takes time to
 * look up: in a small run a processor would be idle for as long as the rooms take. Changes no result.
 */
final class RoomsMeanwhile implements InputReader.Meanwhile {
    private final RoomAssessor rooms;

    RoomsMeanwhile(RoomAssessor rooms) {
        this.rooms = rooms;
    }

    @Override
    public void on(List<Route> routes, BooleanSupplier isWaiting) {
        for (Route route : routes) {
            if (!isWaiting.getAsBoolean()) {
                return;
            }
            rooms.assess(route.duct());
        }
    }
}
