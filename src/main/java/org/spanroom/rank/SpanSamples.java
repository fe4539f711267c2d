package org.spanroom.rank;

import java.util.List;
import org.spanroom.rank.SpanOutlook.Situation;

/**
 * The samples of one span, one at a time: {@link #take} draws the situation, and what else decides a sample is drawn only once it is asked
 * for, because most samples of most spans are decided before. For one thread.
 */
final class SpanSamples {
    private static final int FRICTION = 0;
    private static final int SITUATION = 1;
    private static final int CONDITION = 2;

    private final Simulation simulation;
    private final List<Situation> situations;
    private final double blockedRatio;
    private final Draws draws;
    private final UseCurve use;
    private final double[] fixedPoints;

    private int sample;
    private int turn;
    private int number;
    private boolean feasible;

    SpanSamples(Simulation simulation, int seed, SpanOutlook span) {
        this.simulation = simulation;
        situations = span.situations();
        blockedRatio = span.blockedRatio();
        draws = new Draws(seed, span.spanId());
        use = UseCurve.of(span.use());
        fixedPoints = new double[situations.size()];
        for (int i = 0; i < fixedPoints.length; i++) {
            fixedPoints[i] = simulation.fixedPoints(situations.get(i).quantities());
        }
    }

    /** Goes to a sample, and returns the number of the situation that is drawn. */
    int take(int sample) {
        this.sample = sample;
        turn = draws.turn(sample);
        number = situations.size() == 1 ? 0 : drawnSituation();
        return number;
    }

    /** Returns the points of the sample. */
    double scorePoints() {
        if (!situation().gainsRoom() || isBlocked()) {
            feasible = false;
            return 0;
        }
        double usedPercent = use.percentAt(triangular(betterFrictionRatio()));
        feasible = usedPercent <= 100;
        return fixedPoints[number] + simulation.variedPoints(situation(), usedPercent, sample);
    }

    /** Returns whether all can be pulled and room is gained in the sample whose points were asked for last. */
    boolean isFeasible() {
        return feasible;
    }

    Situation situation() {
        return situations.get(number);
    }

    boolean isBlocked() {
        int part = draws.part(CONDITION, turn);
        if (part >= blockedRatio * Draws.PARTS) {
            return false;
        }
        return part + 1 <= blockedRatio * Draws.PARTS || draws.at(CONDITION, sample, turn) < blockedRatio;
    }

    /** Returns the share of all states of friction that are better than that of the sample. */
    double betterFrictionRatio() {
        return draws.at(FRICTION, sample, turn);
    }

    /** Returns the number of the situation that is drawn: mostly the part of the unit interval decides, in which the draw lies. */
    private int drawnSituation() {
        int part = draws.part(SITUATION, turn);
        double sum = 0;
        for (int i = 0; i < situations.size(); i++) {
            sum += situations.get(i).chanceRatio();
            if (part + 1 <= sum * Draws.PARTS) {
                return i;
            }
            if (part < sum * Draws.PARTS) {
                return situation(draws.at(SITUATION, sample, turn));
            }
        }
        return 0;
    }

    private int situation(double drawn) {
        double sum = 0;
        for (int i = 0; i < situations.size(); i++) {
            sum += situations.get(i).chanceRatio();
            if (drawn < sum) {
                return i;
            }
        }
        return 0;
    }

    /** From a share of all cases to a place between 0 (lubricated) and 1 (bad), dry in the middle being the likeliest. */
    private static double triangular(double share) {
        return share < 0.5 ? Math.sqrt(share / 2) : 1 - Math.sqrt((1 - share) / 2);
    }
}
