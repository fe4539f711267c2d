package org.spanroom.bend;

import java.util.Arrays;
import org.spanroom.model.bend.BendSettings;

/**
 * Decides which neighboring corners are one bend, and which are noise.
 *
 * <p>Method: corners of one run are joined, and corners dropped, as long as the path with fewer bends costs no more than a
 * fixed price above the other, both being fitted to the same vertices; cost is the sum of squared distances over the
 * noise's variance. Joining goes in rounds of pairs that do not touch, so that a long curve of many corners takes a
 * number of rounds that grows with the logarithm of their number.
 */
final class TurnSelection {
    private static final int MOST_ROUNDS = 16;

    private static final int WITNESSES = 4;

    /** Largest share of an arc of long chords that may be between two of its vertices: two bends leave their straight bare. */
    private static final double LONGEST_STEP_RATIO = 0.6;

    private final Trace trace;
    private final Fits fits;
    private final double sigmaM;
    private final double bendPrice;
    private final ChordStretch stretches;
    private final NoiseBends noiseBends;

    /** How many vertices to each side are looked at where corners are judged. */
    private final int reach;

    /** What joining each group with one, two and three that follow saves; asked again in every round, answered once. */
    private final JoinAnswers[] answers = {new JoinAnswers(), new JoinAnswers(), new JoinAnswers()};

    private Corners corners = Corners.NONE;

    TurnSelection(Fits fits, BendSettings settings) {
        this.trace = fits.trace;
        this.fits = fits;
        this.sigmaM = fits.noise.sigmaM;
        this.bendPrice = fits.noise.bendPrice();
        this.stretches = new ChordStretch(fits, settings);
        this.noiseBends = new NoiseBends(fits, settings);
        this.reach = noiseBends.reach();
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
            joinNeighbors();
            corners = noiseBends.drop(corners);
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
            turns[i] = Straight.turnRad(previous, next);
            previous = next;
        }
        return turns;
    }

    /** Takes each run of corners to one side that a drafter may have drawn for one arc, and keeps it where it fits. */
    private void joinRuns(int[] joints, double[] turns) {
        int[] single = new int[turns.length];
        System.arraycopy(joints, 1, single, 0, single.length);
        corners = new Corners(single, single.clone());
        for (JoinAnswers each : answers) {
            each.begin(turns.length);
        }
        int[] joinedWith = ownEnds();
        for (int end = turns.length - 1; end >= 0; ) {
            int start = end;
            double total = Math.abs(turns[end]);
            double stretch = 0;
            while (start > 0 && total + Math.abs(turns[start - 1]) < Chord.MOST_JOINED_RAD) {
                double next = stretches.of(joints[start], joints[start + 1], turns[start - 1], turns[start]);
                if (turns[start - 1] * turns[start] < 0 && next > ChordStretch.MOST) {
                    break;
                }
                stretch = Math.max(stretch, next);
                start--;
                total += Math.abs(turns[start]);
            }
            if (start < end && runSaves(start, end, stretch).isPositive()) {
                joinedWith[start] = end;
            }
            end = start - 1;
        }
        for (JoinAnswers each : answers) {
            each.reverse();
        }
        corners = corners.merged(joinedWith);
    }

    /** As {@link #joiningSaves} for a run of any number of corners; a short one is asked for again among its neighbors. */
    private Saving runSaves(int start, int end, double stretch) {
        if (!mayBeOne(start, end, stretch)) {
            return Saving.NONE;
        }
        Fits.Part part = part(start, end);
        Saving saving = saves(part, stretch);
        if (end - start <= answers.length) {
            answers[end - start - 1].keep(part, saving);
        }
        return saving;
    }

    private void joinNeighbors() {
        for (int round = 0; round < MOST_ROUNDS; round++) {
            if (!joinBest(1) && !joinBest(2) && !joinBest(3)) {
                return;
            }
        }
    }

    /** Joins each group with as many that follow it as are given, wherever that saves most; returns whether any. */
    private boolean joinBest(int more) {
        int places = corners.count() - more;
        if (places <= 0) {
            return false;
        }
        double[] stretch = new double[corners.count() - 1];
        for (int pair = 0; pair < stretch.length; pair++) {
            stretch[pair] = pairStretch(pair);
        }
        Saving[] saves = new Saving[places];
        answers[more - 1].begin(places);
        for (int place = 0; place < places; place++) {
            double most = most(stretch, place, place + more);
            // Four corners at once only where fewer cannot witness an arc.
            boolean asked = more < WITNESSES - 1 || most > ChordStretch.MOST;
            saves[place] = asked ? joiningSaves(place, place + more, most) : Saving.NONE;
        }
        int[] joinedWith = ownEnds();
        int untouched = corners.count();
        for (int place = places - 1; place >= 0; place--) {
            boolean best = place + more < untouched
                    && saves[place].isPositive()
                    && (place == 0 || saves[place].isNoLessThan(saves[place - 1]));
            if (best) {
                joinedWith[place] = place + more;
                untouched = place;
            }
        }
        boolean joined = untouched < corners.count();
        corners = corners.merged(joinedWith);
        return joined;
    }

    /** Returns the place of each group: what each is joined up to where none is joined. */
    private int[] ownEnds() {
        int[] ends = new int[corners.count()];
        Arrays.setAll(ends, group -> group);
        return ends;
    }

    private static double most(double[] stretch, int from, int to) {
        double most = 0;
        for (int pair = from; pair < to; pair++) {
            most = Math.max(most, stretch[pair]);
        }
        return most;
    }

    private double pairStretch(int pair) {
        int one = corners.last[pair];
        int other = corners.first[pair + 1];
        var local = new TangentChain(
                trace, fits.noise, corners.slice(pair, pair + 2), windowStart(pair), windowEnd(pair + 1));
        double oneRad = local.turnRad(0) * local.side[0];
        double otherRad = local.turnRad(1) * local.side[1];
        return stretches.of(one, other, oneRad, otherRad);
    }

    /** Returns by how much one bend instead of several is cheaper, or {@link Saving#NONE} where they cannot be one. */
    private Saving joiningSaves(int fromGroup, int toGroup, double stretch) {
        if (!mayBeOne(fromGroup, toGroup, stretch)) {
            return Saving.NONE;
        }
        JoinAnswers known = answers[toGroup - fromGroup - 1];
        Saving before = known.find(corners, fromGroup, toGroup, windowStart(fromGroup), windowEnd(toGroup));
        if (before != null) {
            return before;
        }
        Fits.Part part = part(fromGroup, toGroup);
        Saving saving = saves(part, stretch);
        known.keep(part, saving);
        return saving;
    }

    private boolean mayBeOne(int fromGroup, int toGroup, double stretch) {
        int vertices = corners.last[toGroup] - corners.first[fromGroup] + 1;
        return stretch <= ChordStretch.MOST || (!Double.isInfinite(stretch) && vertices >= WITNESSES);
    }

    private Fits.Part part(int fromGroup, int toGroup) {
        return new Fits.Part(corners.slice(fromGroup, toGroup + 1), windowStart(fromGroup), windowEnd(toGroup));
    }

    private Saving saves(Fits.Part apart, double stretch) {
        Corners groups = apart.corners();
        double price = bendPrice * (groups.count() - 1);
        TangentChain separate = fits.unfitted(apart);
        separate.settle();
        double bound = separate.squares() / (sigmaM * sigmaM);
        var joined = new Fits.Part(groups.merged(0, groups.count() - 1), apart.from(), apart.to());
        Fits.Fitted one = fits.fitUnlessAbove(joined, bound + price);
        if (one.cost() > bound + price || !isWitnessed(one.chain(), stretch)) {
            return Saving.NONE;
        }
        return Saving.of(price - one.cost(), bound, apart, fits);
    }

    /** Returns whether enough vertices show one arc; where its chords are longer than is common, also between its ends. */
    private boolean isWitnessed(TangentChain joined, double stretch) {
        if (stretch > 1 && ArcVertices.on(joined, 0, 3 * sigmaM) < WITNESSES) {
            return false;
        }
        return stretch <= ChordStretch.MOST || ArcVertices.longestStepRatio(joined, 0, 3 * sigmaM) < LONGEST_STEP_RATIO;
    }

    private int windowStart(int group) {
        return corners.windowStart(group, reach);
    }

    private int windowEnd(int group) {
        return corners.windowEnd(group, reach, trace.size());
    }
}
