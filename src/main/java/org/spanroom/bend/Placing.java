package org.spanroom.bend;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.spanroom.model.Angle;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.BendSettings;
import org.spanroom.model.bend.Bends;

/**
 * Turns a fitted path into bends along the drawn line: decides whether a radius is measured, joins turning that follows
 * upon turning, leaves out what belongs to a vault, and gives every bend its own stretch of the line.
 */
final class Placing {
    /** Turns of less than this many times the smallest that is reported are none where a straight would do to the drawing tolerance. */
    private static final double SLIGHT_RATIO = 2;

    /** A bend before its place is final; lengths along the drawn line. */
    private static final class Draft {
        final double side;
        final int firstArc;
        int lastArc;
        double turnRad;
        double startM;
        double endM;
        double radiusM;
        boolean assumed;

        Draft(double side, int arc) {
            this.side = side;
            this.firstArc = arc;
            this.lastArc = arc;
        }

        double middleM() {
            return (startM + endM) / 2;
        }
    }

    private final TangentChain chain;
    private final BendSettings settings;
    private final Fits fits;
    private final Trace trace;

    Placing(Explanation path, BendSettings settings) {
        this.chain = path.chain();
        this.settings = settings;
        this.fits = path.fits();
        this.trace = chain.trace;
    }

    Bends place(double sweepRadiusM) {
        List<Draft> drafts = new ArrayList<>(chain.arcs);
        for (int arc = 0; arc < chain.arcs; arc++) {
            addDraft(drafts, arc, sweepRadiusM);
        }
        drafts.removeIf(this::isNone);
        drafts.forEach(this::readJoint);
        separate(drafts);
        List<Bend> bends = new ArrayList<>(drafts.size());
        for (Draft draft : drafts) {
            bends.add(new Bend(
                    Angle.ofRad(draft.turnRad),
                    draft.side > 0 ? Bend.Turn.LEFT : Bend.Turn.RIGHT,
                    draft.startM,
                    draft.endM - draft.startM,
                    draft.radiusM,
                    draft.assumed));
        }
        return bends.isEmpty() ? Bends.NONE : new Bends(bends);
    }

    private void addDraft(List<Draft> drafts, int arc, double sweepRadiusM) {
        var draft = new Draft(chain.side[arc], arc);
        draft.turnRad = turnWithinLine(arc);
        var reading = new RadiusReading(chain, arc, fits, settings);
        draft.assumed = !reading.isMeasured();
        draft.radiusM = draft.assumed ? sweepRadiusM : Math.min(chain.radiusM[arc], reading.smallestRadiusM());
        double lengthM = draft.turnRad * (draft.assumed ? sweepRadiusM : chain.radiusM[arc]);
        double middleM = middleAlongM(arc);
        draft.startM = middleM - lengthM / 2;
        draft.endM = middleM + lengthM / 2;
        Draft last = drafts.isEmpty() ? draft : drafts.get(drafts.size() - 1);
        boolean goesOn = last != draft
                && last.side == draft.side
                && (isChord(arc - 1) || isShortStraight(arc - 1, draft.startM - last.endM));
        if (goesOn) {
            join(last, draft, chain.radiusM[arc - 1], chain.radiusM[arc]);
        } else {
            drafts.add(draft);
        }
    }

    private boolean isShortStraight(int arc, double drawnM) {
        return chain.gapM(arc) <= settings.joinStraightM() && drawnM <= 3 * settings.joinStraightM();
    }

    /** Returns whether what is between two arcs is drawn as one step, which may be a chord of an arc that both belong to. */
    private boolean isChord(int arc) {
        int from = chain.corners.last[arc];
        int to = chain.corners.first[arc + 1];
        return to - from <= 1
                && Chord.stretch(trace.distanceM(from, to), chain.turnRad(arc), chain.turnRad(arc + 1), settings) <= 1;
    }

    private static void join(Draft last, Draft next, double lastFittedM, double nextFittedM) {
        last.lastArc = next.lastArc;
        last.turnRad += next.turnRad;
        last.startM = Math.min(last.startM, next.startM);
        last.endM = Math.max(last.endM, next.endM);
        // A radius that does not show by itself is the neighbor's where the fit has it near; a sharp corner stays one.
        boolean nextRides = next.assumed && !last.assumed && nextFittedM > lastFittedM / 2;
        boolean lastRides = last.assumed && !next.assumed && lastFittedM > nextFittedM / 2;
        if (lastRides || (!nextRides && next.radiusM < last.radiusM)) {
            last.radiusM = next.radiusM;
            last.assumed = next.assumed;
        }
    }

    /** Reads the radius of several arcs that are one bend from one arc in their place, where it runs near the drawn line. */
    private void readJoint(Draft draft) {
        if (!draft.assumed || draft.firstArc == draft.lastArc) {
            return;
        }
        Corners parts = chain.corners.slice(draft.firstArc, draft.lastArc + 1);
        Corners joint = parts.merged(0, parts.count() - 1);
        TangentChain one = fits.fit(new Fits.Part(joint, windowStart(draft), windowEnd(draft)))
                .chain();
        var reading = new RadiusReading(one, 0, fits, settings);
        if (reading.isMeasured() && one.farthestM() <= settings.drawingToleranceM()) {
            draft.assumed = false;
            draft.radiusM = reading.smallestRadiusM();
        }
    }

    private int windowStart(Draft draft) {
        return chain.windowStart(draft.firstArc);
    }

    private int windowEnd(Draft draft) {
        return chain.windowEnd(draft.lastArc);
    }

    /** Returns the turn of an arc less what is beyond the line's ends, where the line begins or ends within an arc. */
    private double turnWithinLine(int arc) {
        double turn = chain.turnRad(arc);
        if (arc == 0 && chain.pieceOf(0, 0) == 1) {
            turn -= Math.max(0, beyond(0, 0, chain.phiRad[0]));
        }
        int lastVertex = trace.size() - 1;
        if (arc == chain.arcs - 1 && chain.pieceOf(lastVertex, chain.arcs) == 2 * arc + 1) {
            turn -= Math.max(0, -beyond(arc, lastVertex, chain.phiRad[arc + 1]));
        }
        return turn;
    }

    /** Returns by how much the arc's heading at a vertex is past a heading, in the sense of the turn. */
    private double beyond(int arc, int vertex, double headingRad) {
        double outward = Math.atan2(trace.yM[vertex] - chain.centerY[arc], trace.xM[vertex] - chain.centerX[arc]);
        double heading = outward + chain.side[arc] * Math.PI / 2;
        return chain.side[arc] * Math.IEEEremainder(heading - headingRad, 2 * Math.PI);
    }

    private double middleAlongM(int arc) {
        int from = chain.windowStart(arc);
        int to = chain.windowEnd(arc);
        double towardX = -chain.side[arc] * (chain.normalX(arc) + chain.normalX(arc + 1));
        double towardY = -chain.side[arc] * (chain.normalY(arc) + chain.normalY(arc + 1));
        double norm = Math.hypot(towardX, towardY);
        double placeX = chain.centerX[arc] + chain.radiusM[arc] * towardX / norm;
        double placeY = chain.centerY[arc] + chain.radiusM[arc] * towardY / norm;
        return trace.nearestAlongM(placeX, placeY, from, to);
    }

    private boolean isNone(Draft draft) {
        double middleM = draft.middleM();
        double reachM = draft.assumed ? 0 : (draft.endM - draft.startM) / 2;
        double leastRad = Math.toRadians(settings.minimumDeflectionDeg());
        return draft.turnRad < leastRad
                || (draft.turnRad < SLIGHT_RATIO * leastRad && isWithinTolerance(draft))
                || middleM + reachM <= settings.endStubM()
                || middleM - reachM >= trace.lengthM - settings.endStubM();
    }

    /** Returns whether the line around a bend keeps within the drawing tolerance of a straight. */
    private boolean isWithinTolerance(Draft draft) {
        Straight straight = Straight.through(trace, windowStart(draft), windowEnd(draft));
        return straight.farthestM(trace, windowStart(draft), windowEnd(draft)) <= settings.drawingToleranceM();
    }

    /**
     * Gives each bend a stretch within the line and apart from its neighbors, as near to its place as they leave room: up
     * to halfway to the next bend's middle. An assumed radius shrinks where its arc finds no room; a measured one stays.
     */
    private void separate(List<Draft> drafts) {
        double[] middlesM = middles(drafts);
        double freeM = 0;
        for (int i = 0; i < drafts.size(); i++) {
            Draft draft = drafts.get(i);
            double limitM = i + 1 < drafts.size() ? (middlesM[i] + middlesM[i + 1]) / 2 : trace.lengthM;
            double lengthM = draft.endM - draft.startM;
            double roomM = limitM - freeM;
            if (lengthM > roomM) {
                draft.radiusM *= draft.assumed ? roomM / lengthM : 1;
                lengthM = roomM;
            }
            draft.startM = Math.max(freeM, Math.min(middlesM[i] - lengthM / 2, limitM - lengthM));
            draft.endM = draft.startM + lengthM;
            freeM = draft.endM;
        }
    }

    /** Returns the bends' middles, put in strict order within the line; sorts the bends by them. */
    private double[] middles(List<Draft> drafts) {
        drafts.sort(Comparator.comparingDouble(Draft::middleM));
        double[] middlesM = drafts.stream().mapToDouble(Draft::middleM).toArray();
        double leastM = trace.lengthM / (1000.0 * (middlesM.length + 1));
        double floorM = 0;
        for (int i = 0; i < middlesM.length; i++) {
            floorM += leastM;
            middlesM[i] = Math.max(floorM, middlesM[i]);
            floorM = middlesM[i];
        }
        double ceilingM = trace.lengthM;
        for (int i = middlesM.length - 1; i >= 0; i--) {
            ceilingM -= leastM;
            middlesM[i] = Math.min(ceilingM, middlesM[i]);
            ceilingM = middlesM[i];
        }
        return middlesM;
    }
}
