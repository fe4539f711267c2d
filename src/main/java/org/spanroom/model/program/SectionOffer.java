package org.spanroom.model.program;

import java.util.List;
import java.util.Optional;
import org.spanroom.model.Line;

/**
 * What a section offers: its ducts, and what could be built beside them.
 *
 * @param id name of the section
 * @param bankId name of its bank, or of its duct where no bank is recorded
 * @param from number of one of its vaults
 * @param to number of the other, never the same
 * @param lengthM length of its shortest span
 * @param ducts in the order of their ids
 * @param newDuct what a new duct would cost
 * @param lonLat the line of its best span, in degrees on WGS 84, from {@code from} to {@code to}; empty where it is not recorded
 */
public record SectionOffer(
        String id,
        String bankId,
        int from,
        int to,
        double lengthM,
        List<DuctOffer> ducts,
        NewDuctOffer newDuct,
        Optional<Line> lonLat) {
    public SectionOffer {
        ducts = List.copyOf(ducts);
        if (from == to) {
            throw new IllegalArgumentException(id + " returns to its vault");
        }
    }

    /** Returns the most cables that can go together in one of its ducts, without new build. */
    public int widthPositions() {
        return ducts.stream().mapToInt(DuctOffer::positionsAfter).max().orElse(0);
    }

    /** Returns the most cables that can go together in one of its ducts today. */
    public int widthNowPositions() {
        return ducts.stream().mapToInt(DuctOffer::positionsNow).max().orElse(0);
    }

    /** Returns the vault at the other end. */
    public int other(int vault) {
        return vault == from ? to : from;
    }
}
