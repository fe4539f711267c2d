package org.spanroom.bend;

/** What the vertices on an arc of a path witness. */
final class ArcVertices {
    private ArcVertices() {}

    /** Returns how many vertices are on an arc, with a little slack at its ends. */
    static int on(TangentChain chain, int arc, double slackM) {
        int count = 0;
        for (int vertex = chain.windowStart(arc); vertex <= chain.windowEnd(arc); vertex++) {
            count += isOn(chain, arc, vertex, slackM) ? 1 : 0;
        }
        return count;
    }

    /** Returns how many vertices on an arc are at least a distance apart: what is nearer says nothing more of its radius. */
    static int witnessesOn(TangentChain chain, int arc, double slackM, double apartM) {
        int count = 0;
        double lastM = Double.NEGATIVE_INFINITY;
        for (int vertex = chain.windowStart(arc); vertex <= chain.windowEnd(arc); vertex++) {
            if (chain.trace.alongM[vertex] - lastM >= apartM && isOn(chain, arc, vertex, slackM)) {
                lastM = chain.trace.alongM[vertex];
                count++;
            }
        }
        return count;
    }

    /** Returns the longest part of an arc without a vertex on it, as a share of what is between its outermost vertices. */
    static double longestStepRatio(TangentChain chain, int arc, double slackM) {
        double longestM = 0;
        int first = -1;
        int last = -1;
        for (int vertex = chain.windowStart(arc); vertex <= chain.windowEnd(arc); vertex++) {
            if (isOn(chain, arc, vertex, slackM)) {
                longestM = last < 0 ? 0 : Math.max(longestM, chain.trace.alongM[vertex] - chain.trace.alongM[last]);
                first = first < 0 ? vertex : first;
                last = vertex;
            }
        }
        return last > first ? longestM / (chain.trace.alongM[last] - chain.trace.alongM[first]) : 1;
    }

    private static boolean isOn(TangentChain chain, int arc, int vertex, double slackM) {
        double leaving = chain.station(arc, chain.trace.xM[vertex], chain.trace.yM[vertex]) - chain.leavesM[arc];
        double reaching = chain.reachesM[arc] - chain.station(arc + 1, chain.trace.xM[vertex], chain.trace.yM[vertex]);
        return leaving >= -slackM && reaching >= -slackM;
    }
}
