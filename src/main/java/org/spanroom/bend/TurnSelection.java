package org.spanroom.bend;

import org.spanroom.model.BendSettings;

/**
 * Decides which neighbouring corners are one bend, and which are noise.
 *
 * <p>Method: corners of one run are joined, and corners dropped, as long as the path with fewer bends costs no more than a
 * fixed price above the other, both being fitted to the same vertices; cost is the sum of squared distances over the
 * noise's variance. Joining goes in rounds of pairs that do not touch, so that a long curve of many corners takes a
 * number of rounds that grows with the logarithm of their number.
 */
final class TurnSelection {
    /** What a bend must save to stay, in variances: three unknowns, and a place among many vertices. */
    static final double BEND_PRICE = 14;

    private static final int MOST_ROUNDS = 16;

    private final Trace trace;
    private final BendSettings settings;
    private final double sigmaM;
    private Corners corners = Corners.NONE;

    TurnSelection(Trace trace, BendSettings settings, double sigmaM) {
        this.trace = trace;
        this.settings = settings;
        this.sigmaM = sigmaM;
    }

    /** Returns the groups of corners that are bends, from the vertices where straight pieces meet. */
    Corners select(int[] joints) {
        int count = joints.length - 2;
        if (count <= 0) {
            return Corners.NONE;
        }
        joinRuns(joints, turns(joints));
        for (int round = 0; round < 3; round++) {
            int before = corners.count();
            joinPairs();
            dropNoise();
            if (corners.count() == before) {
                break;
            }
        }
        return corners;
    }

    private double[] turns(int[] joints) {
        double[] turns = new double[joints.length - 2];
        double previous = Straight.through(trace, joints[0], joints[1]).directionRad;
        for (int i = 0; i < turns.length; i++) {
            double next = Straight.through(trace, joints[i + 1], joints[i + 2]).directionRad;
            turns[i] = Math.IEEEremainder(next - previous, 2 * Math.PI);
            previous = next;
        }
        return turns;
    }

    /** Takes each run of corners to one side that a draughtsman may have drawn for one arc, and keeps it where it fits. */
    private void joinRuns(int[] joints, double[] turns) {
        int[] single = new int[turns.length];
        System.arraycopy(joints, 1, single, 0, single.length);
        corners = new Corners(single, single.clone());
        for (int end = turns.length - 1; end >= 0; ) {
            int start = end;
            double total = Math.abs(turns[end]);
            while (start > 0
                    && mayBeOneArc(joints[start], joints[start + 1], turns[start - 1], turns[start])
                    && total + Math.abs(turns[start - 1]) < TangentChain.MOST_TURN_RAD) {
                start--;
                total += Math.abs(turns[start]);
            }
            if (start < end && joiningSaves(start, end) > 0) {
                corners = corners.merged(start, end);
            }
            end = start - 1;
        }
    }

    /** Returns whether two corners lie so that one arc may have been drawn as the chord between them. */
    private boolean mayBeOneArc(int one, int other, double oneRad, double otherRad) {
        double chordM = trace.distanceM(one, other);
        double sumRad = Math.abs(oneRad + otherRad);
        if (oneRad * otherRad < 0 || sumRad > TangentChain.MOST_TURN_RAD) {
            return false;
        }
        double cutM = 0.5 * chordM * Math.sin(Math.abs(oneRad)) * Math.sin(Math.abs(otherRad)) / Math.sin(sumRad);
        return cutM <= settings.drawingToleranceM()
                || (chordM <= settings.longestChordM() && cutM <= settings.chordCutM());
    }

    private void joinPairs() {
        for (int round = 0; round < MOST_ROUNDS && corners.count() > 1; round++) {
            if (!joinBestPairs()) {
                return;
            }
        }
    }

    private boolean joinBestPairs() {
        int pairs = corners.count() - 1;
        double[] saves = new double[pairs];
        for (int pair = 0; pair < pairs; pair++) {
            saves[pair] = pairMayBeOne(pair) ? joiningSaves(pair, pair + 1) : -1;
        }
        boolean joined = false;
        for (int pair = pairs - 1; pair >= 0; pair--) {
            boolean best = saves[pair] > 0
                    && (pair == 0 || saves[pair] >= saves[pair - 1])
                    && (pair == pairs - 1 || saves[pair] > saves[pair + 1]);
            if (best) {
                corners = corners.merged(pair, pair + 1);
                joined = true;
            }
        }
        return joined;
    }

    private boolean pairMayBeOne(int pair) {
        int one = corners.last[pair];
        int other = corners.first[pair + 1];
        var local = new TangentChain(trace, corners.slice(pair, pair + 2), windowStart(pair), windowEnd(pair + 1));
        double oneRad = local.turnRad(0) * local.side[0];
        double otherRad = local.turnRad(1) * local.side[1];
        return oneRad * otherRad < 0
                ? trace.distanceM(one, other) <= settings.longestChordM()
                : mayBeOneArc(one, other, oneRad, otherRad);
    }

    /** Returns by how much one bend in place of several is cheaper. */
    private double joiningSaves(int fromGroup, int toGroup) {
        int from = windowStart(fromGroup);
        int to = windowEnd(toGroup);
        Corners apart = corners.slice(fromGroup, toGroup + 1);
        double one = ChainFit.fit(new TangentChain(trace, apart.merged(0, apart.count() - 1), from, to), sigmaM);
        double several = ChainFit.fit(new TangentChain(trace, apart, from, to), sigmaM);
        if (Double.isInfinite(one)) {
            return -1;
        }
        return several + BEND_PRICE * (toGroup - fromGroup) - one;
    }

    private void dropNoise() {
        for (int group = corners.count() - 1; group >= 0; group--) {
            if (isNoise(group)) {
                corners = corners.without(group);
            }
        }
    }

    private boolean isNoise(int group) {
        int from = windowStart(group);
        int to = windowEnd(group);
        Straight straight = Straight.through(trace, from, to);
        if (straight.farthestM(trace, from, to) <= settings.drawingToleranceM()) {
            return true;
        }
        double without = straight.squaresM2 / (sigmaM * sigmaM);
        if (without < BEND_PRICE) {
            return true;
        }
        double with = ChainFit.fit(new TangentChain(trace, corners.slice(group, group + 1), from, to), sigmaM);
        return !Double.isInfinite(with) && without - with < BEND_PRICE;
    }

    private int windowStart(int group) {
        return group == 0 ? 0 : corners.last[group - 1];
    }

    private int windowEnd(int group) {
        return group == corners.count() - 1 ? trace.size() - 1 : corners.first[group + 1];
    }
}
