package org.spanroom.program.annual;

import java.util.List;
import org.spanroom.program.design.DesignProblem;

/**
 * The connections that tasks make possible.
 *
 * <p>A connection is served from the first year at whose end each piece of its way has a bin that takes its cables: free positions are there from
 * the start, those of a recovered bin from the year of its task, those of a new duct from the year in which it is built. Of each bin, the cables
 * of the connections that are served by the end of a year are at most its positions by then.
 *
 * @param network the pieces with their bins and new ducts, and the demands; costs and prizes in it do not count
 * @param taskOfBin of each piece, of each of its bins, the task that recovers it, or -1 where none does
 * @param firstBuildYear of each piece, the first year in which new ducts can be built; at least the number of years where none can
 * @param buildUses of each piece, of each resource, what its first new duct uses; the second and further ones use it in the ratio of their costs in {@code network}
 * @param wishes of each demand, when serving it counts
 */
public record Connections(
        DesignProblem network,
        List<List<Integer>> taskOfBin,
        List<Integer> firstBuildYear,
        List<List<Double>> buildUses,
        List<Wish> wishes) {
    public Connections {
        taskOfBin = taskOfBin.stream().map(List::copyOf).toList();
        firstBuildYear = List.copyOf(firstBuildYear);
        buildUses = buildUses.stream().map(List::copyOf).toList();
        wishes = List.copyOf(wishes);
        if (taskOfBin.size() != network.pieces().size()
                || firstBuildYear.size() != network.pieces().size()
                || buildUses.size() != network.pieces().size()
                || wishes.size() != network.demands().size()) {
            throw new IllegalArgumentException("pieces, demands and what belongs to them differ in number");
        }
    }

    /** Returns what a new duct of a piece uses of a resource. */
    public double buildUse(int piece, int resource, boolean isFirst) {
        double first = buildUses.get(piece).get(resource);
        double firstMoney = network.pieces().get(piece).more().firstMoney();
        double furtherMoney = network.pieces().get(piece).more().furtherMoney();
        return isFirst ? first : firstMoney > 0 ? first * furtherMoney / firstMoney : 0;
    }
}
