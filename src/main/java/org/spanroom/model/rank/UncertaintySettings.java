package org.spanroom.model.rank;

import java.util.Locale;
import org.spanroom.model.Check;

/**
 * How what is assumed or uncertain varies, to see how certain a rank is.
 *
 * @param simulated whether it is varied at all
 * @param seed where the draws begin; the same seed gives the same result
 * @param samples how many times each span is drawn
 * @param topCount how many spans are treated as the top of the ranking
 * @param diameterRatio by how much an assumed inside diameter or cable diameter may be wrong, up and down
 * @param otherSizeRatio chance that assumed sizes are wrong by so much to either side, both sides equally
 * @param moreCableRatio chance of one additional cable that the records do not have, where contents are recorded
 * @param moreCableAssumedRatio the same where the count of cables is assumed
 * @param blockedRatio chance that a duct turns out blocked, whose condition is recorded as sound or oval
 * @param blockedUnknownRatio the same where no condition is recorded
 * @param leastChangeRatio the smallest expected change that is worth a field check; no chance may be so close to it that sampling
 *     noise would decide which is larger
 * @param moneyLowRatio share of the draws of the rates in which money is below its low figure
 * @param moneyHighRatio the same for its high figure
 * @param priorSpans how many opened ducts the chances above count as, where others were opened: see {@link LearnedChances}
 */
public record UncertaintySettings(
        boolean simulated,
        int seed,
        int samples,
        int topCount,
        double diameterRatio,
        double otherSizeRatio,
        double moreCableRatio,
        double moreCableAssumedRatio,
        double blockedRatio,
        double blockedUnknownRatio,
        double leastChangeRatio,
        double moneyLowRatio,
        double moneyHighRatio,
        int priorSpans) {
    /** This many samples a field check rests on: an expected change has a standard error of 0.008 at most. */
    public static final int FIELD_CHECK_SAMPLES = 4096;

    private static final int MOST_SAMPLES = 10_000;
    private static final int MOST_SCORES = 10_000_000;
    private static final int PRIOR_SPANS = 20;

    public UncertaintySettings {
        Check.within("samples", samples, 8, MOST_SAMPLES);
        Check.positive("topCount", topCount);
        if ((long) samples * topCount > MOST_SCORES) {
            throw new IllegalArgumentException("samples times topCount must be <= " + MOST_SCORES + ", are " + samples
                    + " and " + topCount + "; each thread keeps that many scores");
        }
        Check.within("diameterRatio", diameterRatio, 0, 0.5);
        Check.within("otherSizeRatio", otherSizeRatio, 0, 1);
        Check.within("moreCableRatio", moreCableRatio, 0, 1);
        Check.within("moreCableAssumedRatio", moreCableAssumedRatio, 0, 1);
        Check.within("blockedRatio", blockedRatio, 0, 1);
        Check.within("blockedUnknownRatio", blockedUnknownRatio, 0, 1);
        Check.within("leastChangeRatio", leastChangeRatio, 0, 0.5);
        demandFarFrom("otherSizeRatio", otherSizeRatio, leastChangeRatio);
        demandFarFrom("half of otherSizeRatio", otherSizeRatio / 2, leastChangeRatio);
        demandFarFrom("moreCableRatio", moreCableRatio, leastChangeRatio);
        demandFarFrom("moreCableAssumedRatio", moreCableAssumedRatio, leastChangeRatio);
        demandFarFrom("blockedRatio", blockedRatio, leastChangeRatio);
        demandFarFrom("blockedUnknownRatio", blockedUnknownRatio, leastChangeRatio);
        Check.within("moneyHighRatio", moneyHighRatio, 0, 1);
        Check.within("moneyLowRatio", moneyLowRatio, 0, moneyHighRatio);
        Check.within("priorSpans", priorSpans, 1, 1_000_000);
    }

    /** Settings whose chances count as many opened ducts as in the shipped ones. */
    public UncertaintySettings(
            boolean simulated,
            int seed,
            int samples,
            int topCount,
            double diameterRatio,
            double otherSizeRatio,
            double moreCableRatio,
            double moreCableAssumedRatio,
            double blockedRatio,
            double blockedUnknownRatio,
            double leastChangeRatio,
            double moneyLowRatio,
            double moneyHighRatio) {
        this(
                simulated,
                seed,
                samples,
                topCount,
                diameterRatio,
                otherSizeRatio,
                moreCableRatio,
                moreCableAssumedRatio,
                blockedRatio,
                blockedUnknownRatio,
                leastChangeRatio,
                moneyLowRatio,
                moneyHighRatio,
                PRIOR_SPANS);
    }

    /** Where one unknown alone decides, the expected change is its chance: two standard errors separate it from the least change. */
    private static void demandFarFrom(String name, double chanceRatio, double leastChangeRatio) {
        double rarerRatio = Math.min(chanceRatio, 1 - chanceRatio);
        double noiseRatio = 2 * Math.sqrt(leastChangeRatio * (1 - leastChangeRatio) / FIELD_CHECK_SAMPLES);
        if (rarerRatio > 0 && Math.abs(rarerRatio - leastChangeRatio) <= noiseRatio) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "leastChangeRatio must differ by more than %.4f from every chance, was %s beside %s %s: chance alone would"
                            + " decide which field checks are listed",
                    noiseRatio,
                    leastChangeRatio,
                    name,
                    chanceRatio));
        }
    }

    /** Returns these settings with the simulation on or off. */
    public UncertaintySettings withSimulated(boolean on) {
        return new UncertaintySettings(
                on,
                seed,
                samples,
                topCount,
                diameterRatio,
                otherSizeRatio,
                moreCableRatio,
                moreCableAssumedRatio,
                blockedRatio,
                blockedUnknownRatio,
                leastChangeRatio,
                moneyLowRatio,
                moneyHighRatio,
                priorSpans);
    }
}
