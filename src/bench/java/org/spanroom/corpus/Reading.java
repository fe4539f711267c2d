package org.spanroom.corpus;

import java.util.List;
import org.spanroom.corpus.DrawnSpan.KnownBend;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;

/**
 * How one span was read.
 *
 * @param countRight whether as many bends over 10 degrees were found as there are
 * @param exact whether the number of bends of any size is right
 * @param steady whether as many bends are found in the same vertices to nine decimals of a degree
 * @param arcs how many arcs show five vertices or more
 * @param radiiRight how many of these have their radius within 15 %
 * @param knowableArcs how many of these an ideal reader has right with a chance of {@value #TARGET_RADIUS}
 * @param knowableRight how many of those have their radius within 15 %
 * @param idealWithin2 chance of an ideal reader to have the total within 2 degrees
 * @param idealRadii how many radii an ideal reader would have within 15 %, on average
 */
record Reading(
        double totalErrorDeg,
        boolean countRight,
        boolean exact,
        boolean steady,
        int arcs,
        int radiiRight,
        int knowableArcs,
        int knowableRight,
        double idealWithin2,
        double idealWithin5,
        double idealRadii) {
    static final double TARGET_WITHIN_2 = 0.95;
    static final double TARGET_WITHIN_5 = 0.99;
    static final double TARGET_COUNT = 0.97;
    static final double TARGET_RADIUS = 0.9;
    static final int ARC_VERTICES = 5;
    static final double RADIUS_LIMIT_RATIO = 0.15;
    static final double FAR_OFF_DEG = 40;
    private static final double COUNTED_DEG = 10;

    static Reading of(DrawnSpan span, Bends found, Bends foundRounded) {
        var ideal = new IdealReader(span);
        int arcs = 0;
        int right = 0;
        int knowable = 0;
        int knowableRight = 0;
        double idealRadii = 0;
        for (KnownBend known : span.bends()) {
            if (known.arcVertices() >= ARC_VERTICES) {
                arcs++;
                int hit = isRadiusRight(known, found.list()) ? 1 : 0;
                double chance = ideal.chanceOfRadiusWithin(known.tightestPiece(), RADIUS_LIMIT_RATIO);
                right += hit;
                knowable += chance >= TARGET_RADIUS ? 1 : 0;
                knowableRight += chance >= TARGET_RADIUS ? hit : 0;
                idealRadii += chance;
            }
        }
        return new Reading(
                Math.abs(found.total().deg() - span.totalDeg()),
                isCountRight(span, found),
                found.list().size() == span.bends().size(),
                found.list().size() == foundRounded.list().size(),
                arcs,
                right,
                knowable,
                knowableRight,
                ideal.chanceOfTotalWithin(Math.toRadians(2)),
                ideal.chanceOfTotalWithin(Math.toRadians(5)),
                idealRadii);
    }

    private static boolean isCountRight(DrawnSpan span, Bends found) {
        long wanted = span.bends().stream()
                .filter(bend -> Math.toDegrees(Math.abs(bend.turnRad())) > COUNTED_DEG)
                .count();
        long counted = found.list().stream()
                .filter(bend -> bend.deflection().deg() > COUNTED_DEG)
                .count();
        return wanted == counted;
    }

    /** Compares with the bend to the same side whose middle is nearest, if it is near. */
    static boolean isRadiusRight(KnownBend known, List<Bend> found) {
        Bend.Turn turn = known.turnRad() > 0 ? Bend.Turn.LEFT : Bend.Turn.RIGHT;
        double reachM = 3 + known.radiusM() * Math.abs(known.turnRad());
        double bestM = reachM;
        double radiusM = 0;
        for (Bend bend : found) {
            double awayM = Math.abs(bend.middleM() - known.middleAlongM());
            if (bend.turn() == turn && awayM <= bestM) {
                bestM = awayM;
                radiusM = bend.radiusM();
            }
        }
        return Math.abs(radiusM - known.radiusM()) <= RADIUS_LIMIT_RATIO * known.radiusM();
    }
}
