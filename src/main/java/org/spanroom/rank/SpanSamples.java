package org.spanroom.rank;

import java.util.stream.IntStream;
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
    private final Situation[] situations;

    /** The sum of the chances of a situation and all before it, and the same in parts of the unit interval. */
    private final double[] sumRatios;

    private final double[] sumParts;
    private final double blockedRatio;
    private final double blockedParts;
    private final Draws draws;
    private final UseCurve use;
    private final double[] fixedPoints;

    private int sample;
    private int turn;
    private int number;
    private boolean feasible;

    SpanSamples(Simulation simulation, int seed, SpanOutlook span) {
        this.simulation = simulation;
        situations = span.situations().toArray(Situation[]::new);
        blockedRatio = span.blockedRatio();
        blockedParts = blockedRatio * Draws.PARTS;
        draws = new Draws(seed, span.spanId());
        use = span.use();
        fixedPoints = new double[situations.length];
        sumRatios = new double[fixedPoints.length];
        sumParts = new double[fixedPoints.length];
        double sum = 0;
        for (int i = 0; i < fixedPoints.length; i++) {
            sum += situations[i].chanceRatio();
            sumRatios[i] = sum;
            sumParts[i] = sum * Draws.PARTS;
            fixedPoints[i] = simulation.fixedPoints(situations[i].quantities());
        }
    }

    /** Goes to a sample, and returns the number of the situation that is drawn. */
    int take(int sample) {
        this.sample = sample;
        turn = draws.turn(sample);
        number = situations.length == 1 ? 0 : drawnSituation();
        return number;
    }

    /**
     * Returns the parts of the unit interval in which a draw may lead to one of some situations, in rising order; no other leads to any.
     *
     * @param wanted whether each situation is one of them
     */
    int[] partsOf(boolean[] wanted) {
        return IntStream.range(0, Draws.PARTS)
                .filter(part -> mayDraw(wanted, part))
                .toArray();
    }

    private boolean mayDraw(boolean[] wanted, int part) {
        double from = 0;
        for (int i = 0; i < wanted.length; i++) {
            if (wanted[i] && part <= sumParts[i] && part + 1 >= from) {
                return true;
            }
            from = sumParts[i];
        }
        // Where chances add up to a little less than 1, the first situation has the rest.
        return wanted[0] && part + 1 >= from;
    }

    /** Returns the one of {@value Draws#PARTS} samples that follow one another whose draw of the situation lies in a part. */
    int sampleInPart(int block, int part) {
        return draws.sampleInPart(SITUATION, block, part);
    }

    /** Returns the points of the sample. */
    double scorePoints() {
        if (!situation().gainsRoom() || isBlocked()) {
            feasible = false;
            return 0;
        }
        double place = triangular(betterFrictionRatio());
        double usedPercent = use.percentAt(place);
        feasible = use.isPossible(place, usedPercent);
        return fixedPoints[number] + simulation.variedPoints(situation(), usedPercent, sample);
    }

    /**
     * Sets scores to the points of the first samples, and feasible to whether all can be pulled and room is gained: for each the same as one
     * after another. The steps of a sample wait for one another, those of different samples do not; so each step is made for all samples.
     */
    void scoreAll(double[] scorePoints, boolean[] isFeasible) {
        int[] open = new int[scorePoints.length];
        int[] numbers = new int[scorePoints.length];
        double[] places = new double[scorePoints.length];
        double[] used = new double[scorePoints.length];
        int count = 0;
        for (int each = 0; each < scorePoints.length; each++) {
            take(each);
            if (situation().gainsRoom() && !isBlocked()) {
                open[count] = each;
                numbers[count] = number;
                places[count++] = betterFrictionRatio();
            }
        }
        for (int i = 0; i < count; i++) {
            places[i] = triangular(places[i]);
        }
        use.percentAt(places, used, count);
        for (int i = 0; i < count; i++) {
            isFeasible[open[i]] = use.isPossible(places[i], used[i]);
            scorePoints[open[i]] =
                    fixedPoints[numbers[i]] + simulation.variedPoints(situations[numbers[i]], used[i], open[i]);
        }
    }

    /** Returns whether all can be pulled and room is gained in the sample whose points were asked for last. */
    boolean isFeasible() {
        return feasible;
    }

    Situation situation() {
        return situations[number];
    }

    boolean isBlocked() {
        int part = draws.part(CONDITION, turn);
        if (part >= blockedParts) {
            return false;
        }
        return part + 1 <= blockedParts || draws.at(CONDITION, sample, turn) < blockedRatio;
    }

    /** Returns the share of all states of friction that are better than that of the sample. */
    double betterFrictionRatio() {
        return draws.at(FRICTION, sample, turn);
    }

    /** Returns the number of the situation that is drawn: mostly the part of the unit interval decides, in which the draw lies. */
    private int drawnSituation() {
        int part = draws.part(SITUATION, turn);
        for (int i = 0; i < sumParts.length; i++) {
            if (part + 1 <= sumParts[i]) {
                return i;
            }
            if (part < sumParts[i]) {
                return situation(draws.at(SITUATION, sample, turn));
            }
        }
        return 0;
    }

    private int situation(double drawn) {
        for (int i = 0; i < sumRatios.length; i++) {
            if (drawn < sumRatios[i]) {
                return i;
            }
        }
        return 0;
    }

    /**
     * From a share of all cases to a place between 0 (lubricated) and 1 (bad), dry in the middle being the likeliest. Which half the share is in
     * cannot be foreseen, so that it is a factor, not a branch: the root of half the share, or 1 less the root of half the rest.
     */
    static double triangular(double share) {
        int upper = Math.min((int) (2 * share), 1);
        return upper + (1 - 2 * upper) * Math.sqrt(Math.min(share, 1 - share) / 2);
    }
}
