package org.spanroom.effort;

import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;

/**
 * What comes out of a duct and what goes in: the part of a room, or of a choice, that work and new build go by.
 *
 * @param newCables cables that find a cell in the sleeves that go in
 * @param positionsGained positions more than before
 */
record Extraction(int innerductsOut, int deadCablesOut, int sleeves, int newCables, int positionsGained) {
    static Extraction of(Room room) {
        return new Extraction(
                room.innerductsOut(),
                room.proposal().map(PullChoice::deadCablesOut).orElse(0),
                room.sleeves(),
                room.newCables(),
                room.cablesGained());
    }

    static Extraction of(PullChoice choice) {
        return new Extraction(
                choice.innerductsOut(),
                choice.deadCablesOut(),
                choice.sleeves(),
                choice.newCables(),
                choice.cablesGained());
    }
}
