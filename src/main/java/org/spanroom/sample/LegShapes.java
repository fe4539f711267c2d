package org.spanroom.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The ways in which a street runs from one vault to the next: straight, in a bow, in an S, or round many corners. */
final class LegShapes {
    /** Factory sweep of ducts of 3 in and more: 36 in (UFGS 16525A, 3.5.1). */
    static final double SWEEP_M = 36 * 0.0254;

    /** Factory sweep of smaller ducts: 18 in (UFGS 16525A, 3.5.1). */
    static final double SMALL_SWEEP_M = 18 * 0.0254;

    /** Long sweep: 25 ft (UFGS 16525A, 3.5.1). */
    static final double LONG_SWEEP_M = 25 * 0.3048;

    private static final List<List<Integer>> CROOKED_DEG = List.of(
            List.of(45, -45),
            List.of(60, -60),
            List.of(90, -90),
            List.of(60, -120, 60),
            List.of(90, -135, 45),
            List.of(90, -90, -90, 90),
            List.of(90, -90, -90, 135, -45));

    private static final List<Integer> ELBOWS_DEG = List.of(90, -90);
    private static final List<Integer> MOST_CROOKED_DEG = CROOKED_DEG.get(CROOKED_DEG.size() - 1);

    /** An elbow below the 0.49 m (20 outside diameters) that the thickest cable here wants under load. */
    private static final double ELBOW_M = 0.42;

    private static final double LEAST_LEAD_M = 4;
    private static final double LEAST_CHORD_M = 0.12;
    private static final double LONGEST_WINDING_M = 150;

    /** Longer ways would have had a vault built into them. */
    private static final double LONGEST_CROOKED_M = 300;

    private final Chance chance;

    LegShapes(Chance chance) {
        this.chance = chance;
    }

    /** One turn of a path and the straight after it. */
    private record Turn(double turnRad, double radiusM, double thenM) {}

    /** Returns the straight, now and then with a vertex or two that draw nothing new. */
    DrawnLine straight(Node a, Node b) {
        int chords = chance.happens(0.6) ? 1 : chance.from(2, 3);
        double[] xy = new double[2 * chords + 2];
        for (int i = 0; i <= chords; i++) {
            xy[2 * i] = a.x() + (b.x() - a.x()) * i / chords;
            xy[2 * i + 1] = a.y() + (b.y() - a.y()) * i / chords;
        }
        return DrawnLine.of(xy);
    }

    /** Returns one arc whose middle lies the rise away from the straight, to the left if it is positive. */
    DrawnLine bow(Node a, Node b, double riseM) {
        double half = a.distance(b.x(), b.y()) / 2;
        if (Math.abs(riseM) < 0.05) {
            return straight(a, b);
        }
        double halfTurnRad = 2 * StrictMath.atan(riseM / half);
        double radiusM = half / StrictMath.sin(Math.abs(halfTurnRad));
        double headingRad = StrictMath.atan2(b.y() - a.y(), b.x() - a.x()) + halfTurnRad;
        double[] xy = new Pen(a.x(), a.y(), headingRad)
                .arc(radiusM, -2 * halfTurnRad, chance.between(8, 20))
                .path();
        return endingAt(b, xy);
    }

    /** Returns two arcs, one to each side, with straights before and after them. */
    DrawnLine sBend(Node a, Node b) {
        double turnRad = chance.sign() * StrictMath.toRadians(chance.between(12, 45));
        double radiusM = chance.happens(0.3) ? LONG_SWEEP_M : chance.between(12, 60);
        double betweenM = chance.happens(0.5) ? 0 : chance.between(3, 15);
        double chordM = Math.min(chance.between(0.8, 6), radiusM * Math.abs(turnRad) / 3);
        return fitted(a, b, List.of(new Turn(turnRad, radiusM, betweenM), new Turn(-turnRad, radiusM, 0)), chordM, 0.2)
                .orElseGet(() -> straight(a, b));
    }

    /** Returns a way that turns 90 to 450 degrees in total; empty where that would be too long or the nodes are too near. */
    Optional<Leg> findCrooked(Node a, Node b) {
        return crooked(a, b, new Corners(chance.pick(CROOKED_DEG), drawnRadiusM(), chance.between(8, 22), 0.2))
                .map(way -> new Leg(a, b, way, Course.CROOKED));
    }

    /** Returns a short way of 450 degrees, all near one end; empty where it does not fit. */
    Optional<Leg> findWinding(Node a, Node b) {
        return crooked(a, b, new Corners(MOST_CROOKED_DEG, SWEEP_M, chance.between(5, 7), 0))
                .filter(way -> way.lengthM() <= LONGEST_WINDING_M)
                .map(way -> new Leg(a, b, way, Course.WINDING));
    }

    /** Returns a short way with two tight elbows; empty where it does not fit. */
    Optional<Leg> findTight(Node a, Node b) {
        return crooked(a, b, new Corners(ELBOWS_DEG, ELBOW_M, chance.between(8, 22), 0.2))
                .filter(way -> way.lengthM() <= LONGEST_WINDING_M)
                .map(way -> new Leg(a, b, way, Course.TIGHT));
    }

    /**
     * Corners of a way.
     *
     * @param radiusM 0 for corners drawn as one vertex
     * @param betweenM straight from each corner to the next
     * @param leadRatio how much of the straights at both ends is before the first corner, at least; 0 for as little as can be
     */
    private record Corners(List<Integer> turnsDeg, double radiusM, double betweenM, double leadRatio) {}

    private Optional<DrawnLine> crooked(Node a, Node b, Corners corners) {
        int sign = chance.sign();
        List<Turn> turns = new ArrayList<>();
        for (int i = 0; i < corners.turnsDeg().size(); i++) {
            boolean last = i == corners.turnsDeg().size() - 1;
            double turnRad = sign * StrictMath.toRadians(corners.turnsDeg().get(i));
            turns.add(new Turn(turnRad, corners.radiusM(), last ? 0 : corners.betweenM()));
        }
        double chordM = Math.max(LEAST_CHORD_M, corners.radiusM() / chance.between(3, 6));
        return fitted(a, b, turns, chordM, corners.leadRatio()).filter(way -> way.lengthM() <= LONGEST_CROOKED_M);
    }

    /** Returns the way out of a vault and back to it, three sides of equal length. */
    DrawnLine loop(Node node, double headingRad, double sideM) {
        double thirdRad = 2 * Math.PI / 3;
        double[] xy = new Pen(node.x(), node.y(), headingRad - Math.PI / 6)
                .straight(sideM)
                .corner(thirdRad)
                .straight(sideM)
                .corner(thirdRad)
                .straight(sideM)
                .path();
        return endingAt(node, xy);
    }

    /** Returns 0, for a corner drawn as one vertex, or the radius of an arc that is drawn. */
    private double drawnRadiusM() {
        return switch (chance.pickWeighted(35, 25, 15, 15, 10)) {
            case 0 -> 0;
            case 1 -> SWEEP_M;
            case 2 -> SMALL_SWEEP_M;
            case 3 -> 1.2;
            default -> LONG_SWEEP_M;
        };
    }

    /** Turns that cancel out, with straights at both ends just long enough to lead from one node to the other. */
    private Optional<DrawnLine> fitted(Node a, Node b, List<Turn> turns, double chordM, double leadRatio) {
        Function<Pen, Pen> draw = pen -> {
            for (Turn turn : turns) {
                Pen turned = turn.radiusM() == 0
                        ? pen.corner(turn.turnRad())
                        : pen.arc(turn.radiusM(), turn.turnRad(), chordM);
                turned.straight(turn.thenM());
            }
            return pen;
        };
        Pen trial = draw.apply(new Pen(0, 0, 0));
        double distanceM = a.distance(b.x(), b.y());
        double leadsM = Math.sqrt(Math.max(0, distanceM * distanceM - trial.y() * trial.y())) - trial.x();
        if (leadsM < 2 * LEAST_LEAD_M) {
            return Optional.empty();
        }
        double firstM = leadRatio == 0 ? LEAST_LEAD_M : leadsM * chance.between(leadRatio, 1 - leadRatio);
        double headingRad =
                StrictMath.atan2(b.y() - a.y(), b.x() - a.x()) - StrictMath.atan2(trial.y(), leadsM + trial.x());
        Pen pen = new Pen(a.x(), a.y(), headingRad).straight(firstM);
        return Optional.of(endingAt(b, draw.apply(pen).straight(leadsM - firstM).path()));
    }

    /** Sums of many steps end a rounding error beside the node; the last vertex is put on it. */
    private static DrawnLine endingAt(Node node, double[] xy) {
        xy[xy.length - 2] = node.x();
        xy[xy.length - 1] = node.y();
        return DrawnLine.of(xy);
    }
}
