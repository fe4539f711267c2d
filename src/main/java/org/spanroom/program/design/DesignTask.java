package org.spanroom.program.design;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** What the starts of a search share: the contracted network and the demands as arrays. Immutable. */
final class DesignTask {
    private static final int MOST_NEIGHBORS = 30;

    private final DesignProblem problem;
    private final LinkNetwork network;
    private final int[] cablesOfKind;
    private final int[] kind;
    private final double[][] leftM;
    private final int[][] neighbors;

    DesignTask(DesignProblem problem) {
        this.problem = problem;
        network = Contraction.of(problem);
        List<Demand> demands = problem.demands();
        cablesOfKind =
                demands.stream().mapToInt(Demand::cables).sorted().distinct().toArray();
        kind = demands.stream()
                .mapToInt(demand -> Arrays.binarySearch(cablesOfKind, demand.cables()))
                .toArray();
        Map<Integer, double[]> lengths = new HashMap<>();
        leftM = demands.stream()
                .map(demand ->
                        lengths.computeIfAbsent(network.node(demand.to()), goal -> WaySearch.lengthsM(network, goal)))
                .toArray(double[][]::new);
        neighbors = IntStream.range(0, kind.length).mapToObj(this::nearest).toArray(int[][]::new);
    }

    private int[] nearest(int demand) {
        double[] fromM = WaySearch.lengthsM(network, from(demand));
        double[] toM = leftM[demand];
        var farM = new double[kind.length];
        for (int other = 0; other < farM.length; other++) {
            double straight = fromM[from(other)] + toM[to(other)];
            double crossed = fromM[to(other)] + toM[from(other)];
            farM[other] = Math.min(straight, crossed);
        }
        return IntStream.range(0, kind.length)
                .filter(other -> other != demand)
                .boxed()
                .sorted((a, b) -> farM[a] != farM[b] ? Double.compare(farM[a], farM[b]) : Integer.compare(a, b))
                .limit(MOST_NEIGHBORS)
                .mapToInt(Integer::intValue)
                .toArray();
    }

    DesignProblem problem() {
        return problem;
    }

    LinkNetwork network() {
        return network;
    }

    /** Returns links that nothing passes; each start needs its own. */
    LinkLoads emptyLoads() {
        return new LinkLoads(network, problem.pieces(), cablesOfKind);
    }

    int demands() {
        return kind.length;
    }

    int from(int demand) {
        return network.node(problem.demands().get(demand).from());
    }

    int to(int demand) {
        return network.node(problem.demands().get(demand).to());
    }

    int kind(int demand) {
        return kind[demand];
    }

    boolean isMust(int demand) {
        return problem.demands().get(demand).isMust();
    }

    double prize(int demand) {
        return problem.demands().get(demand).prize();
    }

    /** Returns of each node the length to the end of a demand; not to be changed. */
    double[] leftM(int demand) {
        return leftM[demand];
    }

    /** Returns the demands whose ends are nearest to those of a demand, nearest first; not to be changed. */
    int[] neighbors(int demand) {
        return neighbors[demand];
    }
}
