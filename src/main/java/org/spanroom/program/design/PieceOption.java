package org.spanroom.program.design;

import java.util.List;

/**
 * The cheapest thing to do on a piece for some cables.
 *
 * @param recovered numbers of the bins to recover, ascending
 * @param built how many ducts to build
 * @param money what that costs; infinite where the cables cannot be placed
 * @param rank its place in the piece's {@link OptionLadder}; 0 where there is no ladder
 */
record PieceOption(List<Integer> recovered, int built, double money, int rank) {
    /** The cables cannot be placed, whatever is recovered and built. */
    static final PieceOption IMPOSSIBLE = new PieceOption(List.of(), 0, Double.POSITIVE_INFINITY, 0);

    PieceOption {
        recovered = List.copyOf(recovered);
    }

    boolean isPossible() {
        return Double.isFinite(money);
    }
}
