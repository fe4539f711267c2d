package org.spanroom.bend;

import java.util.Arrays;
import org.spanroom.model.bend.BendSettings;

/**
 * The standard deviation, across the line, of the vertices of a drawn line.
 *
 * <p>Method: on a straight, the distance of a vertex from the chord of its neighbors is noise times a factor that follows
 * from their spacing; on an arc, the difference of two such distances nearly is. The smaller of the two robust estimates
 * (median absolute value over 0.6745, the quartile of the normal distribution) is pulled toward a quarter of the drawing
 * tolerance in proportion to how few vertices speak, and kept between a sixtieth and two thirds of that tolerance,
 * or twice the tolerance where noise wanders.
 */
final class NoiseLevel {
    private static final double QUARTILE_RATIO = 0.6745;

    /** How many vertices the prior is worth. */
    static final double PRIOR_VERTICES = 0.7;

    private static final double LEAST_SHARE = 60;

    private static final int FEWEST_VERTICES = 4;
    private static final int FEWEST_SURE_VERTICES = 12;

    /** A vertex is farther off than this many deviations once in 16 000; of the prior, a quarter of the tolerance, it is that. */
    private static final double DEVIATIONS = 4;

    private NoiseLevel() {}

    /** Returns the noise that neighboring vertices show, under noise of a kind. */
    static Noise estimate(Trace trace, Noise kind, BendSettings settings) {
        return estimate(trace, kind, rawM(trace, kind), settings);
    }

    /** The same where {@link #rawM} is known. */
    static Noise estimate(Trace trace, Noise kind, double rawM, BendSettings settings) {
        int inner = trace.size() - 2;
        if (inner < FEWEST_VERTICES) {
            return kind.withSigma(kind.priorM);
        }
        double blendM = blendM(rawM, inner / 6.0, kind, settings);
        // Each corner spoils three distances: among few vertices corners outvote noise, and the prior is the better
        // start.
        boolean doubtful = inner < FEWEST_SURE_VERTICES && blendM > 2 * kind.priorM;
        return kind.withSigma(doubtful ? kind.priorM : blendM);
    }

    /** Returns what neighboring vertices show by themselves, whatever is likely beforehand. */
    static double rawM(Trace trace, Noise kind) {
        int inner = trace.size() - 2;
        if (inner < FEWEST_VERTICES) {
            return kind.priorM;
        }
        double[] offM = new double[inner];
        double[] factor = new double[inner];
        for (int i = 0; i < inner; i++) {
            measure(trace, kind, i + 1, offM, factor);
        }
        double[] second = new double[inner];
        double[] third = new double[inner - 1];
        for (int i = 0; i < inner; i++) {
            second[i] = Math.abs(offM[i]) / factor[i];
        }
        for (int i = 0; i + 1 < inner; i++) {
            // Neighboring distances share two vertices; 1.25 makes up for their negative correlation on even spacing.
            third[i] = Math.abs(offM[i + 1] - offM[i]) / (1.25 * Math.hypot(factor[i], factor[i + 1]));
        }
        return Math.min(median(second), median(third)) / QUARTILE_RATIO;
    }

    /** Returns a measured deviation, pulled toward the prior and kept within what the settings allow. */
    static double blendM(double measuredM, double vertices, Noise kind, BendSettings settings) {
        double variance = (vertices * measuredM * measuredM + PRIOR_VERTICES * kind.priorM * kind.priorM)
                / (vertices + PRIOR_VERTICES);
        return Math.min(mostM(kind, settings), Math.max(leastM(settings), Math.sqrt(variance)));
    }

    /** Returns how far a vertex may be off the line before it shows a turn: four deviations, or less by the settings. */
    static double toleranceM(Noise noise, BendSettings settings) {
        return Math.min(settings.drawingToleranceM(), DEVIATIONS * noise.sigmaM);
    }

    /** Returns the least that {@link #toleranceM} can be. */
    static double leastToleranceM(BendSettings settings) {
        return Math.min(settings.drawingToleranceM(), DEVIATIONS * leastM(settings));
    }

    private static double mostM(Noise kind, BendSettings settings) {
        return (kind.wanders() ? 2 : 2.0 / 3) * settings.drawingToleranceM();
    }

    static double leastM(BendSettings settings) {
        return settings.drawingToleranceM() / LEAST_SHARE;
    }

    static double priorM(BendSettings settings) {
        return settings.drawingToleranceM() / 4;
    }

    private static void measure(Trace trace, Noise kind, int vertex, double[] offM, double[] factor) {
        double dx = trace.xM[vertex + 1] - trace.xM[vertex - 1];
        double dy = trace.yM[vertex + 1] - trace.yM[vertex - 1];
        double px = trace.xM[vertex] - trace.xM[vertex - 1];
        double py = trace.yM[vertex] - trace.yM[vertex - 1];
        double square = Math.max(dx * dx + dy * dy, 1e-12);
        double share = Math.min(1, Math.max(0, (px * dx + py * dy) / square));
        offM[vertex - 1] = (dx * py - dy * px) / Math.sqrt(square);
        double own = 1 + share * share + (1 - share) * (1 - share);
        factor[vertex - 1] = Math.sqrt(kind.wanders() ? own - shared(kind, vertex, share) : own);
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        return values[values.length / 2];
    }

    private static double shared(Noise kind, int vertex, double share) {
        double before = kind.memory[vertex];
        double after = kind.memory[vertex + 1];
        return 2 * ((1 - share) * before + share * after - share * (1 - share) * before * after);
    }
}
