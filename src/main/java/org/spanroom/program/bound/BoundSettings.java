package org.spanroom.program.bound;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.DesignProblem;

/**
 * How much work to put into a bound.
 *
 * @param steps most steps on the prices
 * @param cases most cases that designs are split into, for a higher bound
 * @param endsOfTrunk most ends of demands inside a trunk: more give a higher bound and take longer
 * @param mostLinks links of the reduced network up to which an integer program is tried
 * @param nodes most nodes of its search tree
 * @param mostSecondsOfProgram a limit of time for it, or 0 for none; with one, another run may give another bound
 */
public record BoundSettings(
        int steps, int cases, int endsOfTrunk, int mostLinks, long nodes, double mostSecondsOfProgram) {
    private static final int LEAST_STEPS = 30;

    /** Beyond these, bounds rise by less than a thousandth. */
    private static final int MOST_STEPS = 1500;

    private static final int MOST_CASES = 400;

    /** Fewer do not raise the bound of a network so large that it would get fewer. */
    private static final int LEAST_CASES = 100;

    /** Sections times connections times cases: all cases for about 20 connections on 300 spans, a few for 50 on 1000. */
    private static final long WORK_OF_CASES = 12_000_000;

    /** For networks of all sizes. Reproducible, but the program of a network near the most links can take long: see the limit of time. */
    public static final BoundSettings DEFAULT = new BoundSettings(MOST_STEPS, MOST_CASES, 3, 200, 2000, 0);

    /** Beyond these an integer program may take minutes. */
    private static final int MOST_QUICK_LINKS = 60;

    /** With more demands than this, fewer links are tried, since an integer program has a flow for each of both. */
    private static final long USUAL_DEMANDS = 100;

    /** As many equal requests make a step take twice as long: all choices of how many pass in which direction are compared. */
    private static final int EQUAL_DEMANDS = 64;

    private static final int MOST_QUICK_NODES = 500;
    private static final long MOST_WORK = 6_000_000_000L;
    private static final long MOST_QUICK_WORK = 100_000_000L;

    public BoundSettings {
        if (steps < 0
                || cases < 0
                || endsOfTrunk < 0
                || endsOfTrunk > 5
                || mostLinks < 0
                || nodes < 0
                || !(mostSecondsOfProgram >= 0)) {
            throw new IllegalArgumentException(steps + " steps, " + cases + " cases, " + endsOfTrunk + " ends, "
                    + mostLinks + " links, " + nodes + " nodes, " + mostSecondsOfProgram + " s");
        }
    }

    /**
     * Returns the defaults for a problem: the larger it is, the longer a step takes and the fewer there are, so that the work stays about
     * the same; equal requests count for more. What decides is the size, never a clock, so that the bound is the same on every machine.
     */
    public static BoundSettings of(DesignProblem problem) {
        long work = work(problem);
        int steps = (int) Math.max(LEAST_STEPS, Math.min(DEFAULT.steps, MOST_WORK / work));
        int cases = (int) Math.min(MOST_CASES, WORK_OF_CASES / work);
        cases = cases < LEAST_CASES ? 0 : cases;
        return new BoundSettings(steps, cases, DEFAULT.endsOfTrunk, MOST_QUICK_LINKS, MOST_QUICK_NODES, 0);
    }

    /** Returns less work for a problem: for one of many bounds. */
    public static BoundSettings quick(DesignProblem problem) {
        int steps = (int) Math.max(LEAST_STEPS, Math.min(DEFAULT.steps, MOST_QUICK_WORK / work(problem)));
        return new BoundSettings(steps, 0, DEFAULT.endsOfTrunk, MOST_QUICK_LINKS, MOST_QUICK_NODES, 0);
    }

    private static long work(DesignProblem problem) {
        Map<List<Integer>, Integer> equal = new HashMap<>();
        int most = 0;
        for (Demand demand : problem.demands()) {
            List<Integer> kind = List.of(
                    Math.min(demand.from(), demand.to()), Math.max(demand.from(), demand.to()), demand.cables());
            most = Math.max(most, equal.merge(kind, 1, Integer::sum));
        }
        long ofDemands = problem.demands().size() * (1L + most / EQUAL_DEMANDS);
        return Math.max(1, problem.pieces().size() * ofDemands);
    }

    /** Returns these with other steps. */
    public BoundSettings withSteps(int other) {
        return new BoundSettings(other, cases, endsOfTrunk, mostLinks, nodes, mostSecondsOfProgram);
    }

    /** Returns these with other cases. */
    public BoundSettings withCases(int other) {
        return new BoundSettings(steps, other, endsOfTrunk, mostLinks, nodes, mostSecondsOfProgram);
    }

    /** Returns whether an integer program of a network is tried. */
    boolean isSmall(ReducedNetwork network) {
        long links = network.links().size();
        return links <= mostLinks && links * network.demands().size() <= mostLinks * USUAL_DEMANDS;
    }
}
