package org.spanroom.pull;

import java.util.Arrays;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Span;
import org.spanroom.model.pull.PullSettings;

/**
 * Cuts a span into the straights and bends that it is pulled through, from its end A.
 *
 * <p>Bends keep their arc. Straights share what is left of the length that counts, in the proportion in which they are
 * drawn. A bend that begins before the one before it ends begins where that one ends; where the arcs are longer than the
 * span no straight is left.
 *
 * <p>Elevations give each straight its grade. Between two grades is a vertical bend of the configured radius, as far as the
 * straights beside it have room for its arc. A plan bend rises as its arc does, and a change of grade inside it is not
 * treated as a turn. Nor is a grade that is shorter than a millimeter, such as rounding leaves at the ends of a span: its rise counts
 * with the grade beside it.
 */
final class SegmentCutter {
    /** Steeper than any duct; keeps a wrong elevation from making a slope of more than its own length. */
    private static final double STEEPEST_SINE = 0.99;

    private static final double LEAST_GRADE_CHANGE_RAD = 1e-6;

    /** Nearer than this to another knot, or to an end of its straight, a knot parts nothing: what is left between is no grade. */
    private static final double LEAST_GRADE_LENGTH_M = 1e-3;

    private final Span span;
    private final Bends bends;
    private final PullSettings settings;
    private final Profile profile;
    private final PullSegments sections = new PullSegments();
    private final double scaleRatio;
    private int nextKnot;

    private SegmentCutter(Span span, Bends bends, PullSettings settings) {
        this.span = span;
        this.bends = bends;
        this.settings = settings;
        this.profile = Profile.of(span.ground(), settings.gradeToleranceM());
        this.scaleRatio = straightScale();
    }

    static PullSegments cut(Span span, Bends bends, PullSettings settings) {
        return new SegmentCutter(span, bends, settings).compute();
    }

    private PullSegments compute() {
        double atM = 0;
        for (Bend bend : bends.list()) {
            double startM = Math.max(atM, bend.startM());
            addStraights(atM, startM);
            atM = startM + bend.arcLengthM();
            addBend(bend, startM, atM);
        }
        addStraights(atM, Math.max(atM, span.drawnLengthM()));
        return sections;
    }

    private double straightScale() {
        double atM = 0;
        double straightM = 0;
        double arcM = 0;
        for (Bend bend : bends.list()) {
            double startM = Math.max(atM, bend.startM());
            straightM += startM - atM;
            atM = startM + bend.arcLengthM();
            arcM += bend.arcLengthM();
        }
        straightM += Math.max(0, span.drawnLengthM() - atM);
        return straightM > 0 ? Math.max(0, span.lengthM() - arcM) / straightM : 0;
    }

    private void addBend(Bend bend, double startM, double endM) {
        double riseM = profile.heightAt(endM) - profile.heightAt(startM);
        double arcM = bend.arcLengthM();
        // Where a curve turns less per meter than a straight is thought to wander, the wander counts.
        double turnRad = Math.max(bend.deflection().rad(), settings.wanderRadPerM() * arcM);
        sections.addBend(arcM, turnRad, bend.radiusM(), arcM > 0 ? sine(riseM, arcM) : 0);
    }

    private void addStraights(double fromM, double toM) {
        if (!(scaleRatio * (toM - fromM) > 0)) {
            return;
        }
        if (profile.isLevel()) {
            sections.addStraight(scaleRatio * (toM - fromM), 0);
            return;
        }
        int firstSection = sections.count;
        double atM = fromM;
        for (; nextKnot < profile.size() && profile.stationM(nextKnot) < toM; nextKnot++) {
            double knotM = profile.stationM(nextKnot);
            if (knotM - atM >= LEAST_GRADE_LENGTH_M && toM - knotM >= LEAST_GRADE_LENGTH_M) {
                addGrade(atM, knotM);
                atM = knotM;
            }
        }
        addGrade(atM, toM);
        roundGradeChanges(firstSection);
    }

    private void addGrade(double fromM, double toM) {
        double lengthM = scaleRatio * (toM - fromM);
        sections.addStraight(lengthM, sine(profile.heightAt(toM) - profile.heightAt(fromM), lengthM));
    }

    /** Puts a vertical bend between each two of the straights just added, half its arc taken from either. */
    private void roundGradeChanges(int first) {
        int count = sections.count - first;
        double[] lengthM = Arrays.copyOfRange(sections.lengthM, first, first + count);
        double[] sine = Arrays.copyOfRange(sections.sineRatio, first, first + count);
        sections.removeFrom(first);
        double takenM = 0;
        for (int i = 0; i < count; i++) {
            double fromRad = Math.asin(sine[i]);
            double toRad = i + 1 < count ? Math.asin(sine[i + 1]) : fromRad;
            double changeRad = Math.abs(toRad - fromRad);
            boolean turns = changeRad > LEAST_GRADE_CHANGE_RAD;
            double arcM =
                    turns ? Math.min(settings.gradeRadiusM() * changeRad, Math.min(lengthM[i], lengthM[i + 1])) : 0;
            double restM = lengthM[i] - takenM - arcM / 2;
            if (restM > 0) {
                sections.addStraight(restM, sine[i]);
            }
            if (turns) {
                sections.addVertical(fromRad, toRad, arcM / changeRad);
            }
            takenM = arcM / 2;
        }
    }

    private static double sine(double riseM, double lengthM) {
        return Math.max(-STEEPEST_SINE, Math.min(STEEPEST_SINE, riseM / lengthM));
    }
}
