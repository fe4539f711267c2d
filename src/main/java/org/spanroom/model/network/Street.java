package org.spanroom.model.network;

import java.util.List;
import org.spanroom.model.Line;

/**
 * A street of the user's own backdrop: it helps to find one's way on a map and decides nothing.
 *
 * @param name as people call it; empty where none is recorded
 * @param lonLat its center lines in degrees on WGS 84
 */
public record Street(String name, List<Line> lonLat) {
    public Street {
        lonLat = List.copyOf(lonLat);
    }
}
