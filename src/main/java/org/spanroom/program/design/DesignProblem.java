package org.spanroom.program.design;

import java.util.List;

/**
 * Find for every demand a way or none, so that the cost of what is recovered and built, each paid once, plus the prizes of what is not
 * served, is least. On every piece of its way a demand's cables lie in one bin; it may change bins at places.
 *
 * @param places how many there are; they are numbered from 0
 */
public record DesignProblem(int places, List<Piece> pieces, List<Demand> demands) {
    public DesignProblem {
        pieces = List.copyOf(pieces);
        demands = List.copyOf(demands);
        for (Piece piece : pieces) {
            inside(piece.from(), places);
            inside(piece.to(), places);
        }
        for (Demand demand : demands) {
            inside(demand.from(), places);
            inside(demand.to(), places);
        }
    }

    private static void inside(int place, int places) {
        if (place < 0 || place >= places) {
            throw new IllegalArgumentException("place " + place + " of " + places);
        }
    }
}
