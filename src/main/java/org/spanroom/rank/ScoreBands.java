package org.spanroom.rank;

import java.util.ArrayList;
import java.util.List;

/**
 * Divides the top of a ranking into bands of spans that the simulation hardly tells apart.
 *
 * <p>Band 1 begins with the first span. Going down, a span belongs to the band above it as long as its score reaches that of the
 * band's first span in at least a third of the joint draws; the first that does not begins the next band. The draws are joint: rates
 * are the same for all spans in a sample. A draw in which both score the same, as where both ducts turn out blocked, counts half, so
 * that two spans of the same scores beat each other in half of the draws, whatever share of them is a tie.
 */
public final class ScoreBands {
    /** Two spans of equal prospects beat each other in half of the draws; below a third the order is fairly certain. */
    private static final double LEAST_SHARE_RATIO = 1.0 / 3;

    private ScoreBands() {}

    /**
     * The bands of some spans.
     *
     * @param bandOfSpan the number of each span's band, from 1, in the order of the ranking
     * @param samples how many joint draws decided
     * @param shareRatio the least share of them in which a span of a band beats the first of that band
     */
    public record Bands(List<Integer> bandOfSpan, int samples, double shareRatio) {
        public Bands {
            bandOfSpan = List.copyOf(bandOfSpan);
        }
    }

    /**
     * Returns the bands of spans.
     *
     * @param scoresBySample the scores of each span, sample by sample ({@link Simulation.Scores#bySample}), in the order of the ranking;
     *     as many samples of each
     * @throws IllegalArgumentException if spans have different numbers of samples, or none
     */
    public static Bands of(List<double[]> scoresBySample) {
        var bands = new ArrayList<Integer>(scoresBySample.size());
        double[] first = {};
        int band = 0;
        for (double[] scores : scoresBySample) {
            demandSamples(scores, scoresBySample.get(0).length);
            if (band == 0 || beatShareRatio(scores, first) < LEAST_SHARE_RATIO) {
                first = scores;
                band++;
            }
            bands.add(band);
        }
        return new Bands(bands, scoresBySample.isEmpty() ? 0 : scoresBySample.get(0).length, LEAST_SHARE_RATIO);
    }

    /** Returns the share of samples in which the one scores more than the other; where both score the same, half counts. */
    static double beatShareRatio(double[] one, double[] other) {
        int halves = 0;
        for (int sample = 0; sample < one.length; sample++) {
            if (one[sample] > other[sample]) {
                halves += 2;
            } else if (one[sample] == other[sample]) {
                halves++;
            }
        }
        return halves / (2.0 * one.length);
    }

    private static void demandSamples(double[] scores, int samples) {
        if (scores.length != samples || samples == 0) {
            throw new IllegalArgumentException("every span must have the same number of samples, at least 1; were "
                    + samples + " and " + scores.length);
        }
    }
}
