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

    private static final List<double[]> CROOKED_DEG = List.of(
            new double[] {45, -45},
            new double[] {60, -60},
            new double[] {90, -90},
            new double[] {60, -120, 60},
            new double[] {90, -135, 45},
            new double[] {90, -90, -90, 90},
            new double[] {90, -90, -90, 135, -45});

    private static final double[] LEAST_CROOKED_DEG = CROOKED_DEG.get(0);
    private static final double[] MOST_CROOKED_DEG = CROOKED_DEG.get(CROOKED_DEG.size() - 1);

    /** An elbow below the 0.49 m (20 outside diameters) that the thickest cable here wants under load. */
    private static final double ELBOW_M = 0.42;

    private static final double LEAST_LEAD_M = 4;
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
    Trace straight(Node a, Node b) {
        int chords = chance.happens(0.6) ? 1 : chance.from(2, 3);
        double[] xy = new double[2 * chords + 2];
        for (int i = 0; i <= chords; i++) {
            xy[2 * i] = a.x() + (b.x() - a.x()) * i / chords;
            xy[2 * i + 1] = a.y() + (b.y() - a.y()) * i / chords;
        }
        return Trace.of(xy);
    }

    /** Returns one arc whose middle lies the rise away from the straight, to the left if it is positive. */
    Trace bow(Node a, Node b, double riseM) {
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
    Trace sBend(Node a, Node b) {
        double turnRad = chance.sign() * StrictMath.toRadians(chance.between(12, 45));
        double radiusM = chance.happens(0.3) ? LONG_SWEEP_M : chance.between(12, 60);
        double betweenM = chance.happens(0.5) ? 0 : chance.between(3, 15);
        double chordM = Math.min(chance.between(0.8, 6), radiusM * Math.abs(turnRad) / 3);
        return fitted(a, b, List.of(new Turn(turnRad, radiusM, betweenM), new Turn(-turnRad, radiusM, 0)), chordM)
                .orElseGet(() -> straight(a, b));
    }

    /** Returns a path that turns 90 to 450 degrees in all; empty where that would be too long or the nodes are too near. */
    Optional<Leg> findCrooked(Node a, Node b) {
        return switch (chance.pickWeighted(74, 13, 13)) {
            case 0 ->
                crooked(a, b, chance.pick(CROOKED_DEG), drawnRadiusM()).map(way -> leg(a, b, way, Course.CROOKED));
            case 1 ->
                crooked(a, b, MOST_CROOKED_DEG, SWEEP_M)
                        .filter(way -> way.lengthM() <= LONGEST_WINDING_M)
                        .map(way -> leg(a, b, way, Course.WINDING));
            default -> crooked(a, b, LEAST_CROOKED_DEG, ELBOW_M).map(way -> leg(a, b, way, Course.TIGHT));
        };
    }

    private static Leg leg(Node a, Node b, Trace way, Course course) {
        return new Leg(a, b, way, course);
    }

    private Optional<Trace> crooked(Node a, Node b, double[] turnsDeg, double radiusM) {
        int sign = chance.sign();
        double jogM = chance.between(8, 22);
        List<Turn> turns = new ArrayList<>();
        for (int i = 0; i < turnsDeg.length; i++) {
            boolean last = i == turnsDeg.length - 1;
            turns.add(new Turn(sign * StrictMath.toRadians(turnsDeg[i]), radiusM, last ? 0 : jogM));
        }
        return fitted(a, b, turns, Math.max(0.15, radiusM / chance.between(2, 5)))
                .filter(way -> way.lengthM() <= LONGEST_CROOKED_M);
    }

    /** Returns the way out of a vault and back to it, three sides of equal length. */
    Trace loop(Node node, double headingRad, double sideM) {
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
    private Optional<Trace> fitted(Node a, Node b, List<Turn> turns, double chordM) {
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
        double firstM = leadsM * chance.between(0.2, 0.8);
        double headingRad =
                StrictMath.atan2(b.y() - a.y(), b.x() - a.x()) - StrictMath.atan2(trial.y(), leadsM + trial.x());
        Pen pen = new Pen(a.x(), a.y(), headingRad).straight(firstM);
        return Optional.of(endingAt(b, draw.apply(pen).straight(leadsM - firstM).path()));
    }

    /** Sums of many steps end a rounding error beside the node; the last vertex is put on it. */
    private static Trace endingAt(Node node, double[] xy) {
        xy[xy.length - 2] = node.x();
        xy[xy.length - 1] = node.y();
        return Trace.of(xy);
    }
}
