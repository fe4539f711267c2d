package org.spanroom.rank;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Supplier;
import org.spanroom.model.Answer;
import org.spanroom.model.effort.VaultAccess;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Vault;
import org.spanroom.model.rank.FieldCheck;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.UncertaintySettings;
import org.spanroom.model.rank.Unknown;

/**
 * Finds what to go and measure first.
 *
 * <p>The decision is whether a span belongs to the top of the ranking. Taken with what is known today it is wrong with the chance
 * {@code min(p, 1 - p)}, p being the chance that the span belongs there. Once an unknown is measured, the decision is taken with the
 * chance of its case, so that the expected change is {@code sum P(s) max(p_s, 1 - p_s) - max(p, 1 - p)} over its states s: by how much
 * less often the decision is wrong (the value of perfect information with a loss of one for a wrong decision, Raiffa and
 * Schlaifer 1961, from memory). The samples are those of the simulation, continued. A change is listed where it is at least the configured
 * one and exceeds its own sampling error.
 */
public final class FieldCheckFinder {
    private static final int FRICTION_STATES = 5;
    private static final int SAMPLES = UncertaintySettings.FIELD_CHECK_SAMPLES;

    /** A change is treated as noise up to this many of its standard errors. */
    private static final double STANDARD_ERRORS = 2;

    /** The larger change first, then the better rank. */
    public static final Comparator<FieldCheck> MOST_CHANGE_FIRST = Comparator.comparingDouble(FieldCheck::changeRatio)
            .reversed()
            .thenComparingInt(check -> check.span().rank().orElse(Integer.MAX_VALUE))
            .thenComparing(FieldCheck::unknown);

    private final Simulation simulation;
    private final double[] thresholds;
    private final double leastChangeRatio;
    private final VaultAccess access;

    /**
     * Prepares the search.
     *
     * @param thresholds what it takes to be among the top in each sample, from {@link TopScores}
     * @param leastChangeRatio the smallest expected change that is worth a look
     */
    public FieldCheckFinder(Simulation simulation, double[] thresholds, double leastChangeRatio, VaultAccess access) {
        this.simulation = simulation;
        this.thresholds = thresholds.clone();
        this.leastChangeRatio = leastChangeRatio;
        this.access = access;
    }

    /**
     * Returns whether a span may need a check, while not all spans are known; it surely needs none if not.
     *
     * @param mostPoints points that no sample of the span exceeds
     * @param soFar some of all scores: what it takes to be among the top can only rise
     */
    public static boolean mayFind(
            Simulation simulation, SpanOutlook span, double mostPoints, TopScores soFar, double leastChangeRatio) {
        if (mostPoints < soFar.leastOfAllPoints()) {
            return false;
        }
        double mostRatio =
                TopChance.of(simulation, span, soFar.leastPoints(), SAMPLES).mostRatio(SAMPLES);
        return mostRatio > 0 && mostRatio >= leastChangeRatio;
    }

    /** Counts of samples, and of those among the top, by the state of one unknown. */
    private static final class Counts {
        private final int[] all = new int[FRICTION_STATES];
        private final int[] top = new int[FRICTION_STATES];

        void add(int state, boolean isTop) {
            all[state]++;
            top[state] += isTop ? 1 : 0;
        }

        private int sumAll() {
            return Arrays.stream(all).sum();
        }

        private int sumTop() {
            return Arrays.stream(top).sum();
        }

        double changeRatio() {
            double right = 0;
            for (int state = 0; state < all.length; state++) {
                right += Math.max(top[state], all[state] - top[state]);
            }
            return (right - Math.max(sumTop(), sumAll() - sumTop())) / sumAll();
        }

        /**
         * Returns the standard error of the change, as if samples were independent: in each sample the decision with the knowledge is
         * better by 1, 0 or -1 than the one without, and differs from it only in the states in which the knowledge turns it.
         */
        double standardErrorRatio() {
            boolean isTopToday = 2 * sumTop() > sumAll();
            int turned = 0;
            for (int state = 0; state < all.length; state++) {
                turned += (2 * top[state] > all[state]) == isTopToday ? 0 : all[state];
            }
            double turnedRatio = turned / (double) sumAll();
            double changeRatio = changeRatio();
            return Math.sqrt(Math.max(0, turnedRatio - changeRatio * changeRatio) / sumAll());
        }
    }

    /**
     * What was found of a span.
     *
     * @param open whether it is so uncertain that the span belongs to the top that a check may be worth making
     * @param checks worth making; none where it is certain enough
     */
    public record Found(boolean open, List<FieldCheck> checks) {
        private static final Found SETTLED = new Found(false, List.of());

        public Found {
            checks = List.copyOf(checks);
        }
    }

    /**
     * Returns the checks worth making on one ranked span.
     *
     * @param ranked the span with all that a check says of it, which is asked for only if there is a check
     */
    public Found find(Supplier<RankedSpan> ranked, SpanOutlook span) {
        int tops = countTops(span);
        // A check cannot avert more wrong decisions than there are.
        int wrong = Math.min(tops, SAMPLES - tops);
        if (wrong == 0 || wrong / (double) SAMPLES < leastChangeRatio) {
            return Found.SETTLED;
        }
        Counts[] counts = counts(span);
        var checks = new ArrayList<FieldCheck>();
        Unknown[] unknowns = Unknown.values();
        for (int i = 0; i < unknowns.length; i++) {
            Unknown unknown = unknowns[i];
            Counts count = counts[i];
            double changeRatio = count.changeRatio();
            if (isWorthwhile(changeRatio, count.standardErrorRatio())) {
                RankedSpan checked = ranked.get();
                Vault vault = vault(checked, unknown);
                List<String> cautions = CrewCautions.of(checked, vault, access);
                checks.add(new FieldCheck(checked, unknown, tops / (double) SAMPLES, changeRatio, vault, cautions));
            }
        }
        return new Found(true, checks);
    }

    /** Draws only the samples in which the span may be among the top. */
    private int countTops(SpanOutlook span) {
        TopChance chance = TopChance.of(simulation, span, thresholds, SAMPLES);
        if (chance.mostRatio(SAMPLES) < leastChangeRatio) {
            return 0;
        }
        SpanSamples samples = simulation.samples(span);
        int[] parts = samples.partsOf(chance.openSituations());
        int tops = 0;
        for (int block = 0; block < SAMPLES / Draws.PARTS; block++) {
            for (int part : parts) {
                int sample = samples.sampleInPart(block, part);
                if (chance.isOpen(sample) && chance.isOpen(samples.take(sample), sample)) {
                    tops += isTop(sample, samples.scorePoints()) ? 1 : 0;
                }
            }
        }
        return tops;
    }

    /** Returns the counts of each unknown, in the order of the constants. */
    private Counts[] counts(SpanOutlook span) {
        Unknown[] unknowns = Unknown.values();
        Counts[] counts = new Counts[unknowns.length];
        Arrays.setAll(counts, unknown -> new Counts());
        SpanSamples samples = simulation.samples(span);
        for (int sample = 0; sample < SAMPLES; sample++) {
            samples.take(sample);
            boolean isTop = isTop(sample, samples.scorePoints());
            for (int i = 0; i < counts.length; i++) {
                counts[i].add(state(unknowns[i], samples), isTop);
            }
        }
        return counts;
    }

    private boolean isTop(int sample, double scorePoints) {
        return TopScores.isTop(scorePoints, thresholds[sample % thresholds.length]);
    }

    private boolean isWorthwhile(double changeRatio, double standardErrorRatio) {
        return changeRatio >= leastChangeRatio && changeRatio > STANDARD_ERRORS * standardErrorRatio;
    }

    private static int state(Unknown unknown, SpanSamples drawn) {
        return switch (unknown) {
            case FRICTION -> Math.min((int) (drawn.betterFrictionRatio() * FRICTION_STATES), FRICTION_STATES - 1);
            case SIZES -> drawn.situation().sizes();
            case CONTENTS -> drawn.situation().contents();
            case CONDITION -> drawn.isBlocked() ? 1 : 0;
        };
    }

    /** Friction shows where the pull is made; all else at whichever vault is easier to open: dry, and off the roadway. */
    private Vault vault(RankedSpan ranked, Unknown unknown) {
        Span span = ranked.span();
        if (unknown == Unknown.FRICTION) {
            SpanEnd end = ranked.assessment().pull().outcome().findBetterEnd().orElse(SpanEnd.A);
            return end == SpanEnd.A ? span.from() : span.to();
        }
        return trouble(span.to()) < trouble(span.from()) ? span.to() : span.from();
    }

    private int trouble(Vault vault) {
        int water = vault.site().water() == Answer.YES ? 2 : 0;
        return water + (access.isInRoadway(vault) ? 1 : 0);
    }
}
