package org.spanroom.program.annual;

import java.util.Arrays;
import org.spanroom.program.design.Bin;
import org.spanroom.program.design.Piece;

/** What it costs under prices to lead some cables over a piece by the end of a year, and in which of its slots they then lie. Not thread-safe. */
final class PiecePrices {
    private final WishNetwork network;
    private final WishState state;
    private final PricedYears priced;
    private final int[] kindOf;
    private final double[][][] known;
    private double chosenPrice;

    PiecePrices(WishNetwork network, WishState state, PricedYears priced) {
        this.network = network;
        this.state = state;
        this.priced = priced;
        int most = 0;
        for (int demand = 0; demand < network.demands(); demand++) {
            most = Math.max(most, network.demand(demand).cables());
        }
        kindOf = new int[most + 1];
        Arrays.fill(kindOf, -1);
        int kinds = 0;
        for (int demand = 0; demand < network.demands(); demand++) {
            int cables = network.demand(demand).cables();
            kindOf[cables] = kindOf[cables] < 0 ? kinds++ : kindOf[cables];
        }
        known = new double[kinds][state.years()][network.links()];
        for (double[][] ofKind : known) {
            for (double[] ofYear : ofKind) {
                Arrays.fill(ofYear, Double.NaN);
            }
        }
    }

    /** Returns what passing a link costs; infinite where it cannot be passed by then. */
    double ofLink(int link, int cables, int year) {
        for (int changed = state.nextTouched(); changed >= 0; changed = state.nextTouched()) {
            for (double[][] ofKind : known) {
                for (double[] ofYear : ofKind) {
                    ofYear[changed] = Double.NaN;
                }
            }
        }
        double[] prices = known[kindOf[cables]][year];
        if (Double.isNaN(prices[link])) {
            double sum = 0;
            for (int piece : network.link(link).pieces()) {
                sum += choose(piece, cables, year) < 0 ? Double.POSITIVE_INFINITY : chosenPrice;
            }
            prices[link] = sum;
        }
        return prices[link];
    }

    /** Returns the slot of a piece in which cables lie at the least price, the one that they fill best of those; -1 where they have no room by then. */
    int choose(int piece, int cables, int year) {
        int best = -1;
        int bestLeft = 0;
        chosenPrice = Double.POSITIVE_INFINITY;
        boolean hasUnbuilt = false;
        for (int slot = state.slotStart(piece); slot < state.slotStart(piece + 1) && !hasUnbuilt; slot++) {
            hasUnbuilt = state.isDuct(slot) && state.builtIn(slot) < 0;
            int left = positionsAtMost(slot) - state.load(slot, state.years() - 1) - cables;
            double price = left < 0 ? Double.POSITIVE_INFINITY : price(slot, cables, year);
            if (price < chosenPrice || (price == chosenPrice && best >= 0 && left < bestLeft)) {
                best = slot;
                bestLeft = left;
                chosenPrice = price;
            }
        }
        return best;
    }

    private int positionsAtMost(int slot) {
        Piece piece = network.piece(state.pieceOf(slot));
        int bin = slot - state.slotStart(state.pieceOf(slot));
        if (bin >= piece.bins().size()) {
            return piece.more().positions();
        }
        Bin each = piece.bins().get(bin);
        return network.taskOf(state.pieceOf(slot), bin) < 0 ? each.now() : each.after();
    }

    private double price(int slot, int cables, int year) {
        if (state.freeFrom(slot, cables) <= year) {
            return 0;
        }
        int piece = state.pieceOf(slot);
        if (state.isDuct(slot)) {
            double before = state.builtIn(slot) < 0
                    ? 0
                    : priced.duct(piece).lossBy()[state.builtIn(slot)];
            double ratio = isFirst(slot) ? 1 : ratio(piece);
            return Math.max(0, ratio * (priced.duct(piece).lossBy()[year] - before));
        }
        int task = state.taskOf(slot);
        if (task < 0 || !priced.task(task).isPossibleBy(year)) {
            return Double.POSITIVE_INFINITY;
        }
        double[] lossBy = priced.task(task).lossBy();
        int now = state.yearOf(task);
        return now >= 0 && now <= year ? Double.POSITIVE_INFINITY : Math.max(0, lossBy[year] - (now < 0 ? 0 : lossBy[now]));
    }

    private boolean isFirst(int slot) {
        int piece = state.pieceOf(slot);
        return slot == state.slotStart(piece) + network.piece(piece).bins().size();
    }

    private double ratio(int piece) {
        var more = network.piece(piece).more();
        return more.firstMoney() > 0 ? more.furtherMoney() / more.firstMoney() : 0;
    }
}
