package org.spanroom.bend;

import java.util.Arrays;
import org.spanroom.model.bend.BendSettings;

/**
 * The standard deviation, across the line, of the vertices of a drawn line.
 *
 * <p>Method: on a straight, the distance of a vertex from the chord of its neighbours is noise times a factor that follows
 * from their spacing; on an arc, the difference of two such distances nearly is. The smaller of the two robust estimates
 * (median absolute value over 0.6745, the quartile of the normal distribution) is pulled toward a quarter of the drawing
 * tolerance in proportion to how few vertices speak, and kept between a sixtieth and two thirds of that tolerance.
 */
final class NoiseLevel {
    private static final double QUARTILE_RATIO = 0.6745;

    /** How many vertices the prior is worth. */
    private static final double PRIOR_VERTICES = 0.7;

    private static final double LEAST_SHARE = 60;

    private NoiseLevel() {}

    static double estimateM(Trace trace, BendSettings settings) {
        int inner = trace.size() - 2;
        if (inner < 4) {
            return priorM(settings);
        }
        double[] offM = new double[inner];
        double[] factor = new double[inner];
        for (int i = 0; i < inner; i++) {
            measure(trace, i + 1, offM, factor);
        }
        double[] second = new double[inner];
        double[] third = new double[inner - 1];
        for (int i = 0; i < inner; i++) {
            second[i] = Math.abs(offM[i]) / factor[i];
        }
        for (int i = 0; i + 1 < inner; i++) {
            // Neighbouring distances share two vertices; 1.25 makes up for their negative correlation on even spacing.
            third[i] = Math.abs(offM[i + 1] - offM[i]) / (1.25 * Math.hypot(factor[i], factor[i + 1]));
        }
        double measuredM = Math.min(median(second), median(third)) / QUARTILE_RATIO;
        return blendM(measuredM, inner / 6.0, settings);
    }

    /** Returns a measured deviation, pulled toward the prior and kept within what the settings allow. */
    static double blendM(double measuredM, double vertices, BendSettings settings) {
        double prior = priorM(settings);
        double variance =
                (vertices * measuredM * measuredM + PRIOR_VERTICES * prior * prior) / (vertices + PRIOR_VERTICES);
        double tolerance = settings.drawingToleranceM();
        return Math.min(2 * tolerance / 3, Math.max(tolerance / LEAST_SHARE, Math.sqrt(variance)));
    }

    private static double priorM(BendSettings settings) {
        return settings.drawingToleranceM() / 4;
    }

    private static void measure(Trace trace, int vertex, double[] offM, double[] factor) {
        double dx = trace.xM[vertex + 1] - trace.xM[vertex - 1];
        double dy = trace.yM[vertex + 1] - trace.yM[vertex - 1];
        double px = trace.xM[vertex] - trace.xM[vertex - 1];
        double py = trace.yM[vertex] - trace.yM[vertex - 1];
        double square = Math.max(dx * dx + dy * dy, 1e-12);
        double share = Math.min(1, Math.max(0, (px * dx + py * dy) / square));
        offM[vertex - 1] = (dx * py - dy * px) / Math.sqrt(square);
        factor[vertex - 1] = Math.sqrt(1 + share * share + (1 - share) * (1 - share));
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        return values[values.length / 2];
    }
}
