package org.spanroom.program.annual;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A solution of a {@link YearProblem}.
 *
 * @param yearOf the year of each task, or {@link #NEVER}
 * @param served of each demand how it is served; empty where it is not
 * @param built of each piece with new ducts, the year in which each of them is built, the first one first
 * @param value the sum of the values of tasks and served connections
 * @param uses of each year, of each resource, what is used, set-ups shared
 */
public record YearPlan(
        List<Integer> yearOf,
        List<Optional<Served>> served,
        Map<Integer, List<Integer>> built,
        double value,
        List<List<Double>> uses) {
    /** The year of a task that is not done. */
    public static final int NEVER = -1;

    public YearPlan {
        yearOf = List.copyOf(yearOf);
        served = List.copyOf(served);
        built = Collections.unmodifiableMap(new TreeMap<>(built));
        uses = uses.stream().map(List::copyOf).toList();
    }

    /**
     * How a connection is served.
     *
     * @param year the first year at whose end all of its way is there
     * @param way the pieces that it passes, from its first place to its last
     * @param bins the bin on each of them: a number of the piece's bins, or that many plus the number of a new duct
     */
    public record Served(int year, List<Integer> way, List<Integer> bins) {
        public Served {
            way = List.copyOf(way);
            bins = List.copyOf(bins);
        }
    }
}
