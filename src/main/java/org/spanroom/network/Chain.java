package org.spanroom.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Routes that follow one another end to end, as one line to cut. Mostly it is a single route.
 *
 * <p>A place on the chain is drawn length from its beginning; gaps that were bridged have none. The chain runs as its
 * first-read route is drawn.
 *
 * @param closed true where the last piece leads back into the first: places then go round, and the pieces are listed for
 *     two rounds
 */
record Chain(List<ChainLink> pieces, boolean closed, double lengthM) {
    static final Comparator<VaultCrossing> ALONG = Comparator.comparingDouble(VaultCrossing::cutFromM)
            .thenComparingDouble(VaultCrossing::cutToM)
            .thenComparingDouble(VaultCrossing::offsetM)
            .thenComparingInt(VaultCrossing::vault);

    Chain {
        pieces = List.copyOf(pieces);
    }

    /** Returns the chain of pieces given in order, whose starts are not yet set. */
    static Chain of(List<ChainLink> pieces, boolean closed) {
        List<ChainLink> placed = new ArrayList<>();
        double lengthM = 0;
        double startM = 0;
        for (int round = 0; round < (closed ? 2 : 1); round++) {
            for (ChainLink piece : pieces) {
                placed.add(new ChainLink(
                        piece.number(), piece.route(), piece.track(), piece.passes(), piece.reversed(), startM));
                startM += piece.lengthM();
            }
            lengthM = round == 0 ? startM : lengthM;
        }
        return new Chain(placed, closed, lengthM);
    }

    /** Returns each piece once. */
    List<ChainLink> round() {
        return closed ? pieces.subList(0, pieces.size() / 2) : pieces;
    }

    /** Returns the passes of all pieces in the order of their cuts. */
    List<VaultCrossing> passes() {
        List<VaultCrossing> all = new ArrayList<>();
        for (ChainLink piece : round()) {
            for (VaultCrossing pass : piece.passes()) {
                VaultCrossing directed = piece.reversed() ? pass.reversed(piece.lengthM()) : pass;
                all.add(pieces.size() == 1 ? directed : directed.shifted(piece.startM()));
            }
        }
        all.sort(ALONG);
        return all;
    }

    /** Returns the pieces that have length between two places. */
    List<ChainLink> between(double fromM, double toM) {
        int first = pieceAt(fromM + VaultCrossing.SAME_PLACE_M);
        int last = pieceAt(toM - VaultCrossing.SAME_PLACE_M);
        return pieces.subList(first, Math.max(first, last) + 1);
    }

    /** Returns the piece at a place; the earlier of two that meet there. */
    ChainLink at(double placeM) {
        return pieces.get(pieceAt(placeM));
    }

    private int pieceAt(double placeM) {
        int low = 0;
        int high = pieces.size() - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (pieces.get(middle).endM() >= placeM) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }
}
