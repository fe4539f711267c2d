package org.spanroom.rank;

import java.util.List;
import org.spanroom.model.pull.FrictionUse;

/**
 * All that the simulation must know of one span: what it may be like, and how likely.
 *
 * @param situations the ways in which sizes and contents may be, what is taken to be true first; at least one
 * @param use how far the tightest limit of the pull is used, by friction
 * @param blockedRatio chance that the duct turns out blocked
 */
public record SpanOutlook(String spanId, List<Situation> situations, UseCurve use, double blockedRatio) {
    private static final double ROUNDING_RATIO = 1e-9;

    /** One way in which sizes and contents may be. */
    public static final class Situation {
        private final int sizes;
        private final int contents;
        private final double chanceRatio;
        private final double[] quantities;
        private final boolean gainsRoom;
        private final double[] savingRatios;

        /**
         * Describes a situation; the arrays are kept, not copied, for there are millions.
         *
         * @param sizes 0 as taken, 1 tighter, 2 roomier
         * @param contents 0 as taken, 1 one additional cable, 2 few and 3 many items where their counts are assumed
         * @param chanceRatio how likely; all of a span add up to 1
         * @param quantities of the criteria, in their order, as they would then be
         * @param gainsRoom whether more finds a place than before
         * @param savingRatios saving per money spent, one for each sample's rates; empty where rates do not vary
         */
        public Situation(
                int sizes,
                int contents,
                double chanceRatio,
                double[] quantities,
                boolean gainsRoom,
                double[] savingRatios) {
            this.sizes = sizes;
            this.contents = contents;
            this.chanceRatio = chanceRatio;
            this.quantities = quantities;
            this.gainsRoom = gainsRoom;
            this.savingRatios = savingRatios;
        }

        int sizes() {
            return sizes;
        }

        int contents() {
            return contents;
        }

        double chanceRatio() {
            return chanceRatio;
        }

        double[] quantities() {
            return quantities;
        }

        boolean gainsRoom() {
            return gainsRoom;
        }

        double[] savingRatios() {
            return savingRatios;
        }
    }

    /** @param use how far each limit of the pull is used in each state of friction */
    public SpanOutlook(String spanId, List<Situation> situations, FrictionUse use, double blockedRatio) {
        this(spanId, situations, UseCurve.of(use), blockedRatio);
    }

    public SpanOutlook {
        situations = List.copyOf(situations);
        double sumRatio = 0;
        for (Situation situation : situations) {
            sumRatio += situation.chanceRatio();
        }
        if (Math.abs(sumRatio - 1) > ROUNDING_RATIO) {
            throw new IllegalArgumentException("chances of " + spanId + " must add up to 1, were " + sumRatio);
        }
    }
}
