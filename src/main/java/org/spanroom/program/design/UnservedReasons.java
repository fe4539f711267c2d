package org.spanroom.program.design;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Says why demands are not served in a design. */
final class UnservedReasons {
    private final DesignTask task;
    private final List<int @Nullable []> ways;
    private final WorkingDesign alone;
    private final WorkingDesign full;
    private final int[] island;

    private UnservedReasons(DesignTask task, List<int @Nullable []> ways) {
        this.task = task;
        this.ways = ways;
        alone = new WorkingDesign(task);
        full = new WorkingDesign(task);
        for (int demand = 0; demand < ways.size(); demand++) {
            int[] way = ways.get(demand);
            if (way != null) {
                full.put(demand, way);
            }
        }
        island = islands(task.problem());
    }

    /** Returns the reason of each demand that has no way; nothing is calculated where all have one. */
    static Map<Integer, Unserved> of(DesignTask task, List<int @Nullable []> ways) {
        return ways.stream().allMatch(Objects::nonNull) ? Map.of() : new UnservedReasons(task, ways).all();
    }

    private Map<Integer, Unserved> all() {
        var reasons = new TreeMap<Integer, Unserved>();
        for (int demand = 0; demand < ways.size(); demand++) {
            if (ways.get(demand) == null) {
                reasons.put(demand, reason(demand));
            }
        }
        return reasons;
    }

    private Unserved reason(int demand) {
        double aloneMoney = leastMoney(alone, demand);
        double addedMoney = leastMoney(full, demand);
        if (aloneMoney == Double.POSITIVE_INFINITY) {
            Demand ends = task.problem().demands().get(demand);
            boolean isJoined = root(island, ends.from()) == root(island, ends.to());
            return new Unserved(isJoined ? Unserved.Reason.TOO_MANY_CABLES : Unserved.Reason.NO_WAY, aloneMoney);
        }
        if (addedMoney < Double.POSITIVE_INFINITY) {
            return new Unserved(Unserved.Reason.NOT_WORTH_IT, addedMoney);
        }
        return aloneMoney > task.prize(demand)
                ? new Unserved(Unserved.Reason.NOT_WORTH_IT, aloneMoney)
                : new Unserved(Unserved.Reason.CROWDED_OUT, aloneMoney);
    }

    private static double leastMoney(WorkingDesign design, int demand) {
        int[] way = design.way(demand, Double.POSITIVE_INFINITY);
        return way == null ? Double.POSITIVE_INFINITY : design.marginalMoney(demand, way);
    }

    /** Places joined by pieces that can take any cable, as a forest: of each place the next one toward its root. */
    private static int[] islands(DesignProblem problem) {
        var next = new int[problem.places()];
        Arrays.setAll(next, place -> place);
        for (Piece piece : problem.pieces()) {
            if (new PieceCost(piece).mostCables() > 0) {
                next[root(next, piece.from())] = root(next, piece.to());
            }
        }
        return next;
    }

    private static int root(int[] next, int place) {
        int at = place;
        while (next[at] != at) {
            next[at] = next[next[at]];
            at = next[at];
        }
        return at;
    }
}
