package org.spanroom.bend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.LongStream;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Compares the fit of straight, arc and straight with a general least-squares optimiser (Hipparchus 4.0.1), which is given
 * the same vertices, other unknowns (center, radius, two headings), the distance to the nearest piece, and no derivatives.
 */
class ChainFitTest {
    private static final double SIGMA_M = 0.03;

    static LongStream seeds() {
        return LongStream.range(0, 40);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void findsTheMinimumThatAGeneralOptimiserFinds(long seed) {
        double turnDeg = 30 + seed;
        double radiusM = 8 + seed / 2.0;
        Trace trace = Trace.of(Drawing.heading(9.0 * seed)
                .straight(50, 8)
                .arc(turnDeg, radiusM, 14)
                .straight(60, 9)
                .line(SIGMA_M, seed));
        var chain = new TangentChain(
                trace,
                Noise.independent(SIGMA_M, SIGMA_M),
                new Corners(new int[] {10}, new int[] {20}),
                0,
                trace.size() - 1);

        double cost = ChainFit.fit(chain, SIGMA_M).cost();
        double[] reference = reference(trace, chain);

        assertThat(chain.radiusM[0]).isCloseTo(reference[2], within(0.003 * reference[2]));
        assertThat(Math.toDegrees(chain.turnRad(0)))
                .isCloseTo(Math.toDegrees(reference[4] - reference[3]), within(0.02));
        assertThat(cost * SIGMA_M * SIGMA_M).isCloseTo(squares(trace, reference), within(1e-3 * SIGMA_M * SIGMA_M));
    }

    private static double[] reference(Trace trace, TangentChain near) {
        double[] start = {
            near.centerX[0] + 0.3, near.centerY[0] - 0.2, 1.1 * near.radiusM[0], near.phiRad[0], near.phiRad[1]
        };
        MultivariateJacobianFunction model = point -> {
            double[] at = point.toArray();
            double[] value = residuals(trace, at);
            double[][] jacobian = new double[value.length][at.length];
            for (int unknown = 0; unknown < at.length; unknown++) {
                double[] more = at.clone();
                double[] less = at.clone();
                more[unknown] += 1e-6;
                less[unknown] -= 1e-6;
                double[] above = residuals(trace, more);
                double[] below = residuals(trace, less);
                for (int i = 0; i < value.length; i++) {
                    jacobian[i][unknown] = (above[i] - below[i]) / 2e-6;
                }
            }
            RealVector values = new ArrayRealVector(value, false);
            return new Pair<>(values, new org.hipparchus.linear.Array2DRowRealMatrix(jacobian, false));
        };
        return new LevenbergMarquardtOptimizer()
                .optimize(new LeastSquaresBuilder()
                        .start(start)
                        .target(new double[trace.size()])
                        .model(model)
                        .maxEvaluations(500)
                        .maxIterations(500)
                        .build())
                .getPoint()
                .toArray();
    }

    private static double squares(Trace trace, double[] path) {
        double sum = 0;
        for (double residual : residuals(trace, path)) {
            sum += residual * residual;
        }
        return sum;
    }

    /** Signed distances to the nearest of two half-lines and the arc between them; the path turns left. */
    private static double[] residuals(Trace trace, double[] path) {
        double[] residuals = new double[trace.size()];
        for (int i = 0; i < residuals.length; i++) {
            double dx = trace.xM[i] - path[0];
            double dy = trace.yM[i] - path[1];
            double nearest = Double.POSITIVE_INFINITY;
            if (along(dx, dy, path[3]) <= 0) {
                nearest = left(dx, dy, path[3]) + path[2];
            }
            if (along(dx, dy, path[4]) >= 0) {
                double second = left(dx, dy, path[4]) + path[2];
                nearest = Math.abs(second) < Math.abs(nearest) ? second : nearest;
            }
            if (along(dx, dy, path[3]) > 0 && along(dx, dy, path[4]) < 0) {
                nearest = path[2] - Math.hypot(dx, dy);
            }
            residuals[i] = nearest;
        }
        return residuals;
    }

    private static double along(double dx, double dy, double headingRad) {
        return dx * Math.cos(headingRad) + dy * Math.sin(headingRad);
    }

    private static double left(double dx, double dy, double headingRad) {
        return dy * Math.cos(headingRad) - dx * Math.sin(headingRad);
    }
}
