package org.spanroom.program.design;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.spanroom.program.design.BinFilling.Stage;
import org.spanroom.program.design.BinFilling.Step;

/**
 * The least cost of serving demands on one piece: exact, each demand whole in one bin.
 *
 * <p>Of options of one cost, the one that builds fewer ducts, then the one that recovers fewer bins. Deterministic. What was
 * asked once is kept; not thread-safe.
 */
public final class PieceCost {
    private static final PieceOption NOTHING_TO_DO = new PieceOption(List.of(), 0, 0, 0);

    private final List<Bin> bins;
    private final NewDucts more;
    private final Map<Counts, PieceOption> known = new HashMap<>();
    private @Nullable OptionLadder ladder;

    @SuppressWarnings("ArrayRecordComponent") // Equality is its own, by content.
    private record Counts(int[] byCables) {
        /** Without the zeros at the end, so that what is equal looks equal. */
        static Counts of(int[] byCables) {
            int used = byCables.length;
            while (used > 0 && byCables[used - 1] == 0) {
                used--;
            }
            return new Counts(Arrays.copyOf(byCables, used));
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Counts counts && Arrays.equals(counts.byCables, byCables);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(byCables);
        }
    }

    /** Creates the cost of a piece; it holds nothing yet. */
    public PieceCost(Piece piece) {
        this(piece.bins(), piece.more());
    }

    PieceCost(List<Bin> bins, NewDucts more) {
        this.bins = List.copyOf(bins);
        this.more = more;
    }

    /**
     * Returns the least cost, infinite where the demands cannot all be placed.
     *
     * @param countByCables at each index, how many demands have so many cables; index 0 is not looked at
     */
    public double money(int... countByCables) {
        return option(countByCables).money();
    }

    PieceOption option(int... countByCables) {
        var counts = Counts.of(countByCables);
        PieceOption option = known.get(counts);
        if (option == null) {
            option = found(counts.byCables());
            known.put(counts, option);
        }
        return option;
    }

    /** Returns how many cables the widest bin takes after whatever can be done: no demand with more can pass. */
    public int mostCables() {
        int widest = bins.stream().mapToInt(Bin::after).max().orElse(0);
        return more.most() == 0 ? widest : Math.max(widest, more.positions());
    }

    /**
     * Returns what to do for some demands, at the cost that {@link #money} names.
     *
     * @param cablesOf of each demand its cables
     * @throws IllegalArgumentException if they cannot all be placed
     */
    public Design.Use use(Map<Integer, Integer> cablesOf) {
        int[] counts = counts(cablesOf);
        PieceOption option = option(counts);
        int[] sizes = sizes(counts);
        List<Step> steps = new BinFilling(sizes, opened(option)).fill(countsOf(sizes, counts));
        if (!option.isPossible() || steps == null) {
            throw new IllegalArgumentException("no room for demands of cables " + cablesOf + " in " + bins);
        }
        return new Design.Use(placed(cablesOf, sizes, steps), option.recovered(), option.built(), option.money());
    }

    private static int[] counts(Map<Integer, Integer> cablesOf) {
        int most = cablesOf.values().stream().mapToInt(Integer::intValue).max().orElse(0);
        var counts = new int[most + 1];
        cablesOf.values().forEach(cables -> counts[cables]++);
        return counts;
    }

    /**
     * What serves one demand less often serves all: costs never fall, so that it is then the best for all as well. The demand
     * left out is always the largest, so that the result does not depend on what was asked before.
     */
    private PieceOption found(int[] countByCables) {
        if (countByCables.length <= 1) {
            return NOTHING_TO_DO;
        }
        int[] fewer = countByCables.clone();
        fewer[fewer.length - 1]--;
        PieceOption less = option(fewer);
        if (!less.isPossible()) {
            return less;
        }
        int[] sizes = sizes(countByCables);
        int[] counts = countsOf(sizes, countByCables);
        if (less.equals(NOTHING_TO_DO) && OptionLadder.isFree(bins, sizes, counts)) {
            return less;
        }
        if (OptionLadder.isShort(bins, more)) {
            return ladder().option(ladder().firstRank(less.rank(), sizes, counts));
        }
        boolean fits = new BinFilling(sizes, opened(less)).fill(counts) != null;
        return fits ? less : calculated(countByCables);
    }

    private OptionLadder ladder() {
        if (ladder == null) {
            ladder = OptionLadder.of(bins, more);
        }
        return ladder;
    }

    /** For pieces with so many options that they are not listed. */
    private PieceOption calculated(int[] countByCables) {
        int[] sizes = sizes(countByCables);
        int[] counts = countsOf(sizes, countByCables);
        List<Step> steps = new BinFilling(sizes, stages(Arrays.stream(counts).sum())).fill(counts);
        if (steps == null) {
            return PieceOption.IMPOSSIBLE;
        }
        List<Integer> recovered = steps.stream()
                .filter(step -> step.isPaid() && !step.stage().isNew())
                .map(step -> step.stage().bin())
                .sorted()
                .toList();
        int built = (int) steps.stream().filter(step -> step.stage().isNew()).count();
        // Summed in the order of the bins, so that a cost does not depend on how it was found
        double money =
                recovered.stream().mapToDouble(bin -> bins.get(bin).money()).sum() + more.money(built);
        return new PieceOption(recovered, built, money, 0);
    }

    /** Bins that cannot be recovered first: there is nothing to choose. */
    private List<Stage> stages(int demands) {
        var stages = new ArrayList<Stage>();
        for (int bin = 0; bin < bins.size(); bin++) {
            Bin each = bins.get(bin);
            if (each.after() > 0) {
                stages.add(new Stage(bin, each.now(), each.after(), each.money(), false));
            }
        }
        stages.sort(Comparator.comparing(stage -> stage.after() > stage.now()));
        int useful = more.positions() == 0 ? 0 : Math.min(more.most(), demands);
        for (int duct = 0; duct < useful; duct++) {
            double money = duct == 0 ? more.firstMoney() : more.furtherMoney();
            stages.add(new Stage(bins.size() + duct, 0, more.positions(), money, true));
        }
        return stages;
    }

    /** The bins with what is done, in the order in which they are filled: what is free before what is recovered. */
    private List<Stage> opened(PieceOption option) {
        var free = new ArrayList<Stage>();
        var paid = new ArrayList<Stage>();
        for (int bin = 0; bin < bins.size(); bin++) {
            Bin each = bins.get(bin);
            if (option.recovered().contains(bin)) {
                paid.add(new Stage(bin, each.after(), each.after(), 0, false));
            } else {
                free.add(new Stage(bin, each.now(), each.now(), 0, false));
            }
        }
        free.addAll(paid);
        for (int duct = 0; duct < option.built(); duct++) {
            free.add(new Stage(bins.size() + duct, 0, more.positions(), 0, true));
        }
        return free;
    }

    private static Map<Integer, Integer> placed(Map<Integer, Integer> cablesOf, int[] sizes, List<Step> steps) {
        var waiting = new TreeMap<Integer, List<Integer>>();
        new TreeMap<>(cablesOf)
                .forEach((demand, cables) -> waiting.computeIfAbsent(cables, none -> new ArrayList<>())
                        .add(demand));
        var binOf = new TreeMap<Integer, Integer>();
        for (Step step : steps) {
            for (int size = 0; size < sizes.length; size++) {
                for (int count = 0; count < step.filled()[size]; count++) {
                    binOf.put(
                            Objects.requireNonNull(waiting.get(sizes[size])).remove(0),
                            step.stage().bin());
                }
            }
        }
        return binOf;
    }

    /** Returns the numbers of cables that occur, descending. */
    private static int[] sizes(int[] countByCables) {
        var sizes = new int[countByCables.length];
        int found = 0;
        for (int cables = countByCables.length - 1; cables > 0; cables--) {
            if (countByCables[cables] > 0) {
                sizes[found++] = cables;
            }
        }
        return Arrays.copyOf(sizes, found);
    }

    private static int[] countsOf(int[] sizes, int[] countByCables) {
        var counts = new int[sizes.length];
        for (int size = 0; size < sizes.length; size++) {
            counts[size] = countByCables[sizes[size]];
        }
        return counts;
    }
}
