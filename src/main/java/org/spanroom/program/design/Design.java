package org.spanroom.program.design;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A solution of a {@link DesignProblem}.
 *
 * @param ways of each demand the pieces that it passes, from its first place to its last; empty where it is not served
 * @param uses of each piece that a way passes, what is done there
 * @param workMoney cost of all that is recovered and built
 * @param unservedMoney prizes of the demands that are not served; infinite where a must is not
 */
public record Design(List<List<Integer>> ways, Map<Integer, Use> uses, double workMoney, double unservedMoney) {
    public Design {
        ways = ways.stream().map(List::copyOf).toList();
        // Sorted, so that sums over them are the same in every run.
        uses = Collections.unmodifiableMap(new TreeMap<>(uses));
    }

    /**
     * What is done on one piece.
     *
     * @param binOf the bin of each demand that passes: a number of {@link Piece#bins}, or that many plus the number of a new duct
     * @param recovered numbers of the bins that are recovered
     * @param built how many ducts are built
     * @param money what that costs
     */
    public record Use(Map<Integer, Integer> binOf, List<Integer> recovered, int built, double money) {
        public Use {
            binOf = Collections.unmodifiableMap(new TreeMap<>(binOf));
            recovered = List.copyOf(recovered);
        }
    }

    /** Returns what is minimized. */
    public double totalMoney() {
        return workMoney + unservedMoney;
    }
}
