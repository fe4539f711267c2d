package org.spanroom.bend;

import org.jspecify.annotations.Nullable;

/**
 * Distances of a line's vertices from a path, one for each vertex: which piece of the path a vertex belongs to follows from its order and
 * from the points of contact. Holds those of the path that was summed last, so that its normal equations need not find them again.
 *
 * <p>Not safe for use by several threads: one for each {@link Trace}.
 */
final class Residuals {
    private final Trace trace;
    private final double[] offM;
    private final int[] piece;
    private @Nullable TangentChain held;

    Residuals(Trace trace) {
        this.trace = trace;
        this.offM = new double[trace.size()];
        this.piece = new int[trace.size()];
    }

    /** Forgets what is held of a path, since it changes. */
    void forget(TangentChain chain) {
        if (held == chain) {
            held = null;
        }
    }

    /** Returns the sum of squared residuals of all vertices of a path, in square meters. */
    double squares(TangentChain chain) {
        double sum = squares(chain, chain.from, chain.to, 0);
        held = chain;
        return sum;
    }

    /** Returns the sum of squared residuals of vertices from one to another, both included, the first before the end of a group. */
    double squares(TangentChain chain, int first, int last, int firstGroup) {
        held = null;
        find(chain, first, last, firstGroup);
        Noise noise = chain.noise;
        boolean wanders = noise.wanders();
        double sum = 0;
        int group = firstGroup;
        int vertex = first;
        while (vertex <= last) {
            while (group < chain.arcs && vertex > chain.corners.last[group]) {
                group++;
            }
            int end = group < chain.arcs ? Math.min(last, chain.corners.last[group]) : last;
            for (; vertex <= end; vertex++) {
                double fresh = vertex == first || !wanders
                        ? offM[vertex]
                        : noise.gain[vertex] * (offM[vertex] - noise.memory[vertex] * offM[vertex - 1]);
                sum += fresh * fresh;
            }
            // A group of one vertex ends with it.
            if (isLoneCorner(chain, end, group)) {
                double missM = chain.missM(group, trace.xM[end], trace.yM[end]);
                sum += missM * missM;
            }
        }
        return sum;
    }

    private void find(TangentChain chain, int first, int last, int firstGroup) {
        trace.countVisits(last - first + 1L);
        int vertex = first;
        int group = firstGroup;
        while (vertex <= last) {
            while (group < chain.arcs && vertex > chain.corners.last[group]) {
                group++;
            }
            int beyond = group < chain.arcs ? Math.min(last + 1, chain.corners.first[group]) : last + 1;
            vertex = findOnStraight(chain, group, vertex, beyond);
            int end = group < chain.arcs ? Math.min(last, chain.corners.last[group]) : last;
            for (; vertex <= end; vertex++) {
                set(chain, vertex, chain.withinGroup(group, trace.xM[vertex], trace.yM[vertex]));
            }
        }
    }

    /** Finds residuals of vertices before the corners of a group; most are on the straight that leads to it. */
    private int findOnStraight(TangentChain chain, int line, int from, int beyond) {
        double cos = chain.cos[line];
        double sin = chain.sin[line];
        double originX = chain.originX[line];
        double originY = chain.originY[line];
        double rhoM = chain.rhoM[line];
        double startsM = chain.startsM(line);
        double endsM = chain.endsM(line);
        for (int vertex = from; vertex < beyond; vertex++) {
            double awayX = trace.xM[vertex] - originX;
            double awayY = trace.yM[vertex] - originY;
            double alongM = cos * awayX + sin * awayY;
            if (alongM < startsM || alongM > endsM) {
                set(chain, vertex, chain.besideStraight(line, vertex, alongM < startsM));
            } else {
                piece[vertex] = 2 * line;
                offM[vertex] = cos * awayY - sin * awayX - rhoM;
            }
        }
        return Math.max(from, beyond);
    }

    private void set(TangentChain chain, int vertex, int itsPiece) {
        piece[vertex] = itsPiece;
        offM[vertex] = chain.pieceOffset(itsPiece, trace.xM[vertex], trace.yM[vertex]);
    }

    /** Returns each vertex's signed distance to the left of a path. */
    double[] offsetsM(TangentChain chain) {
        if (held != chain) {
            squares(chain);
        }
        double[] copy = new double[chain.to - chain.from + 1];
        System.arraycopy(offM, chain.from, copy, 0, copy.length);
        return copy;
    }

    /** Fills the normal equations of a path in meters. */
    void linearize(TangentChain chain, BandedSystem system) {
        if (held != chain) {
            squares(chain);
        }
        system.clear();
        trace.countVisits(chain.to - chain.from + 1L);
        Noise noise = chain.noise;
        var slopes = new ChainSlopes();
        var pair = noise.wanders() ? new Innovation(noise, chain.from) : null;
        int group = 0;
        for (int vertex = chain.from; vertex <= chain.to; vertex++) {
            while (group < chain.arcs && vertex > chain.corners.last[group]) {
                group++;
            }
            add(chain, system, vertex, slopes, pair);
            if (isLoneCorner(chain, vertex, group)) {
                addMiss(chain, system, vertex, group, slopes);
            }
        }
    }

    private void add(
            TangentChain chain, BandedSystem system, int vertex, ChainSlopes slopes, @Nullable Innovation pair) {
        double placeX = trace.xM[vertex];
        double placeY = trace.yM[vertex];
        int at = piece[vertex] / 2;
        boolean straight = piece[vertex] % 2 == 0;
        if (straight && pair == null) {
            system.addStraight(3 * at, chain.station(at, placeX, placeY), offM[vertex]);
            return;
        }
        if (straight) {
            slopes.values[0] = -chain.station(at, placeX, placeY);
            slopes.values[1] = -1;
        } else {
            slopes.fillArc(chain, at, placeX, placeY);
        }
        int count = straight ? 2 : TangentChain.ARC_WIDTH;
        if (pair == null) {
            system.add(3 * at, slopes.values, count, offM[vertex]);
        } else {
            pair.add(system, vertex, 3 * at, slopes.values, count, offM[vertex]);
        }
    }

    private void addMiss(TangentChain chain, BandedSystem system, int vertex, int group, ChainSlopes slopes) {
        double missM = chain.missM(group, trace.xM[vertex], trace.yM[vertex]);
        if (missM > 0) {
            slopes.fillMiss(chain, group, trace.xM[vertex], trace.yM[vertex]);
            system.add(3 * group, slopes.values, TangentChain.ARC_WIDTH, missM);
        }
    }

    private static boolean isLoneCorner(TangentChain chain, int vertex, int group) {
        return group < chain.arcs && vertex == chain.corners.first[group] && chain.isLone(group);
    }
}
