package org.spanroom.model.effort;

import java.util.List;
import java.util.stream.IntStream;

/**
 * Some draws of the rates, rate by rate: what is calculated for all draws at once reads the draws of one rate after another.
 * Immutable; safe for use by several threads.
 */
public final class RateDraws {
    private final double[][] inUnitByRow;
    private final int count;

    private RateDraws(double[][] inUnitByRow, int count) {
        this.inUnitByRow = inUnitByRow;
        this.count = count;
    }

    /** Returns the first draws of a seed, the same as {@link Rates#sampled} gives one by one. */
    public static RateDraws sampled(Rates rates, long seed, int count) {
        List<double[]> draws = IntStream.range(0, count)
                .mapToObj(sample -> rates.sampled(seed, sample).inUnitByRow())
                .toList();
        double[][] byRow = new double[rates.inUnitByRow().length][count];
        for (int row = 0; row < byRow.length; row++) {
            for (int draw = 0; draw < count; draw++) {
                byRow[row][draw] = draws.get(draw)[row];
            }
        }
        return new RateDraws(byRow, count);
    }

    /** Returns how many draws there are. */
    public int count() {
        return count;
    }

    /** Returns the rate in its unit by draw; not to be changed. */
    public double[] inUnit(RateKey key, RateRows at) {
        return inUnitByRow[at.row(key)];
    }
}
