package org.spanroom.learn;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.hipparchus.special.Beta;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The chance after a look, against the posterior integrated numerically and against enumeration of a grid of chances. */
class BetaBinomialTest {
    private static final int EVALUATIONS = 1_000_000;

    @ParameterizedTest(name = "prior {0} of {1} spans, {2} events in {3}")
    @CsvSource({"0.25, 20, 3, 5", "0.5, 20, 0, 7", "0.1, 40, 9, 30", "0.06, 100, 2, 12"})
    void theMeanIsThatOfTheIntegratedPosterior(double priorRatio, double priorSpans, int events, int spans) {
        double a = priorSpans * priorRatio;
        double b = priorSpans - a;
        double beta = Math.exp(Beta.logBeta(a, b));
        double all = integral(p -> Math.pow(p, a - 1 + events) * Math.pow(1 - p, b - 1 + spans - events) / beta);
        double first = integral(p -> Math.pow(p, a + events) * Math.pow(1 - p, b - 1 + spans - events) / beta);

        assertEquals(first / all, BetaBinomial.meanRatio(priorRatio, priorSpans, events, spans), 1e-9);
    }

    private static double integral(org.hipparchus.analysis.UnivariateFunction density) {
        return new IterativeLegendreGaussIntegrator(20, 1e-12, 1e-14).integrate(EVALUATIONS, density, 0, 1);
    }

    /** One look after another leaves the same as all at once. */
    @Test
    void theOrderOfLooksDoesNotMatter() {
        double chanceRatio = 0.25;
        double weight = 20;
        for (int event : new int[] {1, 0, 0, 1, 1, 0, 0, 0}) {
            chanceRatio = BetaBinomial.meanRatio(chanceRatio, weight, event, 1);
            weight++;
        }

        assertEquals(BetaBinomial.meanRatio(0.25, 20, 3, 8), chanceRatio, 1e-12);
    }

    /** Of a chance of three outcomes, the middle ones of a fine grid of Dirichlet densities, weighed by the counts' likelihood. */
    @Test
    void severalOutcomesAreThoseOfTheEnumeratedPosterior() {
        double[] prior = {0.25, 0.5, 0.25};
        int[] counts = {2, 1, 4};
        int steps = 400;
        double sum = 0;
        double[] weighed = new double[3];
        for (int i = 0; i < steps; i++) {
            for (int j = 0; i + j < steps; j++) {
                double few = (i + 1.0 / 3) / steps;
                double typical = (j + 1.0 / 3) / steps;
                double many = 1 - few - typical;
                double density = Math.pow(few, 20 * prior[0] - 1 + counts[0])
                        * Math.pow(typical, 20 * prior[1] - 1 + counts[1])
                        * Math.pow(many, 20 * prior[2] - 1 + counts[2]);
                sum += density;
                weighed[0] += density * few;
                weighed[1] += density * typical;
                weighed[2] += density * many;
            }
        }
        for (int k = 0; k < 3; k++) {
            assertEquals(weighed[k] / sum, BetaBinomial.meanRatio(prior[k], 20, counts[k], 7), 2e-3);
        }
    }

    @Test
    void nothingLookedAtLeavesTheChanceBitForBit() {
        assertEquals(0.1, BetaBinomial.meanRatio(0.1, 3, 0, 0), 0);
    }
}
