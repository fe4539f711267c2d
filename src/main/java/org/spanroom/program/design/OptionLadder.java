package org.spanroom.program.design;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * All that can be done on a piece, cheapest first: which bins are recovered, and how many ducts are built. Of one cost, fewer new
 * ducts first, then fewer recovered bins.
 */
final class OptionLadder {
    private static final int MOST_OPTIONS = 1 << 13;

    private final List<Bin> bins;
    private final NewDucts more;
    private final int[] recoverable;
    private final int[] codes;

    private OptionLadder(List<Bin> bins, NewDucts more) {
        this.bins = bins;
        this.more = more;
        recoverable = recoverable(bins);
        codes = sorted((ducts(more) + 1) << recoverable.length);
    }

    private int[] sorted(int options) {
        double[] money = IntStream.range(0, options).mapToDouble(this::money).toArray();
        var order = new Integer[options];
        Arrays.setAll(order, code -> code);
        Arrays.sort(order, (a, b) -> {
            int byMoney = Double.compare(money[a], money[b]);
            int byBuilt = byMoney != 0 ? byMoney : Integer.compare(built(a), built(b));
            int byRecovered =
                    byBuilt != 0 ? byBuilt : Integer.compare(Integer.bitCount(mask(a)), Integer.bitCount(mask(b)));
            return byRecovered != 0 ? byRecovered : Integer.compare(a, b);
        });
        return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
    }

    /** Returns whether a piece has few enough options to list them. */
    static boolean isShort(List<Bin> bins, NewDucts more) {
        int bits = recoverable(bins).length;
        return bits < 13 && ((long) ducts(more) + 1) << bits <= MOST_OPTIONS;
    }

    /** Returns whether the positions that are free take the groups; then nothing is to be done. */
    static boolean isFree(List<Bin> bins, int[] sizes, int[] counts) {
        var room = new int[bins.size()];
        for (int bin = 0; bin < room.length; bin++) {
            room[bin] = bins.get(bin).now();
        }
        return takes(room, sizes, counts);
    }

    static OptionLadder of(List<Bin> bins, NewDucts more) {
        return new OptionLadder(bins, more);
    }

    private static int[] recoverable(List<Bin> bins) {
        return IntStream.range(0, bins.size())
                .filter(bin -> bins.get(bin).isRecoverable())
                .toArray();
    }

    private static int ducts(NewDucts more) {
        return more.positions() == 0 ? 0 : more.most();
    }

    private int mask(int code) {
        return code & (1 << recoverable.length) - 1;
    }

    private int built(int code) {
        return code >> recoverable.length;
    }

    private double money(int code) {
        double money = 0;
        for (int bit = 0; bit < recoverable.length; bit++) {
            money += (code >> bit & 1) * bins.get(recoverable[bit]).money();
        }
        return money + more.money(built(code));
    }

    /**
     * Returns the first option from a rank on that takes the groups; as many as there are options if none does.
     *
     * @param sizes numbers of cables of a group, descending
     * @param counts how many groups there are of each size
     */
    int firstRank(int from, int[] sizes, int[] counts) {
        int rank = from;
        while (rank < codes.length && !takes(room(rank), sizes, counts)) {
            rank++;
        }
        return rank;
    }

    /** Returns what each bin takes, new ducts last. */
    private int[] room(int rank) {
        int code = codes[rank];
        var room = new int[bins.size() + built(code)];
        Arrays.fill(room, bins.size(), room.length, more.positions());
        for (int bin = 0; bin < bins.size(); bin++) {
            room[bin] = bins.get(bin).now();
        }
        for (int bit = 0; bit < recoverable.length; bit++) {
            if ((code >> bit & 1) == 1) {
                room[recoverable[bit]] = bins.get(recoverable[bit]).after();
            }
        }
        return room;
    }

    private static boolean takes(int[] room, int[] sizes, int[] counts) {
        return couldTake(room, sizes, counts) && (isFilledAtOnce(room, sizes, counts) || isFilled(room, sizes, counts));
    }

    /** Necessary: bins have room for all cables, and for as many groups of a size and above as there are. */
    private static boolean couldTake(int[] room, int[] sizes, int[] counts) {
        long cables = 0;
        for (int bin : room) {
            cables += bin;
        }
        int groups = 0;
        for (int size = 0; size < sizes.length; size++) {
            cables -= (long) sizes[size] * counts[size];
            groups += counts[size];
            long most = 0;
            for (int bin : room) {
                most += bin / sizes[size];
            }
            if (most < groups) {
                return false;
            }
        }
        return cables >= 0;
    }

    /** Sufficient: the largest groups first, each in the first bin with room. */
    private static boolean isFilledAtOnce(int[] room, int[] sizes, int[] counts) {
        int[] left = room.clone();
        for (int size = 0; size < sizes.length; size++) {
            int groups = counts[size];
            for (int bin = 0; bin < left.length && groups > 0; bin++) {
                int put = Math.min(groups, left[bin] / sizes[size]);
                left[bin] -= put * sizes[size];
                groups -= put;
            }
            if (groups > 0) {
                return false;
            }
        }
        return true;
    }

    private static boolean isFilled(int[] room, int[] sizes, int[] counts) {
        List<BinFilling.Stage> stages = Arrays.stream(room)
                .filter(each -> each > 0)
                .mapToObj(each -> new BinFilling.Stage(0, each, each, 0, false))
                .toList();
        return new BinFilling(sizes, stages).fill(counts) != null;
    }

    /** Returns what an option means; impossible behind the last rank. */
    PieceOption option(int rank) {
        if (rank == codes.length) {
            return PieceOption.IMPOSSIBLE;
        }
        int code = codes[rank];
        var recovered = new ArrayList<Integer>();
        for (int bit = 0; bit < recoverable.length; bit++) {
            if ((code >> bit & 1) == 1) {
                recovered.add(recoverable[bit]);
            }
        }
        return new PieceOption(recovered, built(code), money(code), rank);
    }
}
