package org.spanroom.bend;

/**
 * How the vertices of one line are off: by normal noise of one standard deviation at right angles to the line, either each
 * by itself, or wandering, so that neighbors are off to the same side.
 *
 * <p>Method: wandering noise is a stationary Gauss-Markov sequence along the line, correlation {@code exp(-d / wander)}. What
 * a vertex is off by, less what its predecessor lets expect, is independent of all vertices before; squares of these
 * innovations take the place of squared distances, in time proportional to the vertices.
 */
final class Noise {
    /** What a bend must save to stay, in variances: three unknowns, and a place among many vertices. */
    static final double BEND_PRICE = 14;

    /** More where noise wanders: it drifts to the side over many lengths, and each is a chance to look like a bend. */
    private static final double WANDERING_BEND_PRICE = 20;

    final double sigmaM;

    /** Distance over which the correlation falls to 1/e; 0 where each vertex is off by itself. */
    final double wanderM;

    /** What is likely before the line is seen; see {@link NoiseLevel}. */
    final double priorM;

    /** Correlation of each vertex with the one before it; empty where each is off by itself. */
    final double[] memory;

    /** What makes an innovation's deviation that of a vertex; empty where each is off by itself. */
    final double[] gain;

    private Noise(double sigmaM, double priorM, double wanderM, double[] memory, double[] gain) {
        this.sigmaM = sigmaM;
        this.priorM = priorM;
        this.wanderM = wanderM;
        this.memory = memory;
        this.gain = gain;
    }

    static Noise independent(double sigmaM, double priorM) {
        return new Noise(sigmaM, priorM, 0, new double[0], new double[0]);
    }

    static Noise wandering(Trace trace, double sigmaM, double priorM, double wanderM) {
        double[] memory = new double[trace.size()];
        double[] gain = new double[trace.size()];
        gain[0] = 1;
        for (int vertex = 1; vertex < memory.length; vertex++) {
            memory[vertex] = Math.exp((trace.alongM[vertex - 1] - trace.alongM[vertex]) / wanderM);
            gain[vertex] = 1 / Math.sqrt(1 - memory[vertex] * memory[vertex]);
        }
        return new Noise(sigmaM, priorM, wanderM, memory, gain);
    }

    Noise withSigma(double otherM) {
        return new Noise(otherM, priorM, wanderM, memory, gain);
    }

    /** Returns whether this differs so little from another that a path under one will do for the other. */
    boolean isLike(Noise other) {
        return wanderM == other.wanderM && sigmaM > 0.7 * other.sigmaM && sigmaM < 1.4 * other.sigmaM;
    }

    /** Returns what a bend must save to stay, in variances. */
    double bendPrice() {
        return wanders() ? WANDERING_BEND_PRICE : BEND_PRICE;
    }

    boolean wanders() {
        return memory.length > 0;
    }

    double varianceM2() {
        return sigmaM * sigmaM;
    }

    /** Returns the logarithm of the determinant of the vertices' correlations. */
    double logDeterminant() {
        double product = 0;
        for (double each : gain) {
            product -= 2 * Math.log(each);
        }
        return product;
    }

    /** Returns the sum of squared innovations of offsets, in the offsets' unit squared. */
    double squares(double[] offM) {
        double sum = 0;
        for (int vertex = 0; vertex < offM.length; vertex++) {
            double fresh = vertex == 0 || !wanders()
                    ? offM[vertex]
                    : gain[vertex] * (offM[vertex] - memory[vertex] * offM[vertex - 1]);
            sum += fresh * fresh;
        }
        return sum;
    }
}
