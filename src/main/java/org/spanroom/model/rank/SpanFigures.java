package org.spanroom.model.rank;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.spanroom.model.Prefetch;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.SpanList;

/**
 * What planning a program of work needs of every span of a run, by the span's number in its {@link SpanList}: a few numbers for each
 * of millions, in packed arrays, where an {@link Assessment} takes kilobytes. Each is what the span's assessment says. Unmodifiable;
 * safe for use by several threads.
 */
public final class SpanFigures {
    /** How many draws of the simulation a mask has room for: the first ones. */
    public static final int MOST_DRAWS = Long.SIZE;

    /** Memory for each span, without the draws of a simulation. */
    public static final int SPAN_BYTES = 2 * Double.BYTES + 3 * Integer.BYTES + 3 * Byte.BYTES;

    /** Memory for each span that the draws of a simulation take. */
    public static final int DRAWS_BYTES = Long.BYTES;

    private static final int SPARE = 1;
    private static final int ASSUMED = 2;
    private static final int DOUBTFUL = 4;
    private static final int TIGHT_BEND = 8;

    private final double[] recoveryMoney;
    private final double[] siteHours;
    private final int[] positionsNow;
    private final int[] positionsAfter;
    private final int[] recoveryLeadDays;
    private final byte[] exclusions;
    private final byte[] cautions;
    private final byte[] flags;
    private final long[] feasibleDraws;
    private final List<Exclusion> reasons = new CopyOnWriteArrayList<>();

    private SpanFigures(int spans, boolean simulated) {
        recoveryMoney = new double[spans];
        siteHours = new double[spans];
        positionsNow = new int[spans];
        positionsAfter = new int[spans];
        recoveryLeadDays = new int[spans];
        exclusions = new byte[spans];
        cautions = new byte[spans];
        flags = new byte[spans];
        feasibleDraws = new long[simulated ? spans : 0];
    }

    /** Returns the cost of recovery; 0 if no innerduct comes out. */
    public double recoveryMoney(int number) {
        return recoveryMoney[number];
    }

    /** Returns the hours on site, over all shifts; 0 if no innerduct comes out. */
    public double siteHours(int number) {
        return siteHours[number];
    }

    /** Returns how many design cables the duct can take now, everything left in; 0 where its contents are unknown. */
    public int positionsNow(int number) {
        return positionsNow[number];
    }

    /** Returns how many it can take once the proposed innerducts are out; 0 where its contents are unknown. */
    public int positionsAfter(int number) {
        return positionsAfter[number];
    }

    /** Returns the days until all permits of recovering are there, if they are requested together. */
    public int recoveryLeadDays(int number) {
        return recoveryLeadDays[number];
    }

    /** Returns the first reason why the span is not ranked; empty for a ranked span. */
    public Optional<Exclusion> exclusion(int number) {
        int reason = exclusions[number];
        return reason == 0 ? Optional.empty() : Optional.of(reasons.get(reason - 1));
    }

    /** Returns whether the duct is spare; see {@link Duct#isSpare}. */
    public boolean isSpare(int number) {
        return (flags[number] & SPARE) != 0;
    }

    /** Returns whether the number of innerducts or cables in the duct is assumed; see {@link Duct#contentsSource}. */
    public boolean isAssumed(int number) {
        return (flags[number] & ASSUMED) != 0;
    }

    /** Returns whether the pull is possible only with good lubrication; see {@link Verdict#isPullDoubtful}. */
    public boolean isPullDoubtful(int number) {
        return (flags[number] & DOUBTFUL) != 0;
    }

    /** Returns whether an innerduct must pass a bend that is too tight for it; see {@link Verdict#isBendTight}. */
    public boolean isBendTight(int number) {
        return (flags[number] & TIGHT_BEND) != 0;
    }

    /** Returns how many cautions the span has, those of open gates included. */
    public int cautions(int number) {
        return cautions[number];
    }

    /**
     * Returns in which draws of the simulation everything can be pulled and room is gained: bit {@code i} is set if it is so in draw
     * {@code i}. Of a simulation of more than {@link #MOST_DRAWS} samples these are the first. 0 for a span that is
     * excluded for good, and for all spans where nothing was simulated.
     */
    public long feasibleDraws(int number) {
        return feasibleDraws.length == 0 ? 0 : feasibleDraws[number];
    }

    /** Reads what is kept about some spans, so that it is in the processor's cache when they are used. */
    public void prefetch(int[] numbers) {
        int sum = 0;
        for (int number : numbers) {
            sum += positionsNow[number]
                    + positionsAfter[number]
                    + exclusions[number]
                    + cautions[number]
                    + flags[number];
        }
        Prefetch.read(sum);
    }

    /** Takes the figures while spans are assessed: each span once, several spans at a time by several threads. */
    public static final class Collector {
        private final SpanFigures figures;

        /**
         * Prepares for this many spans.
         *
         * @param simulated whether there will be draws of a simulation
         */
        public Collector(int spans, boolean simulated) {
            figures = new SpanFigures(spans, simulated);
        }

        /** Takes what an assessment says of a span, and what gates and cautions say. */
        public void add(int number, Assessment assessment, Verdict verdict) {
            assessment.effort().ifPresent(effort -> {
                figures.recoveryMoney[number] = effort.recoveryMoney();
                figures.siteHours[number] = effort.time().siteHours();
            });
            figures.positionsNow[number] = assessment.room().positionsNow().orElse(0);
            figures.positionsAfter[number] = assessment.room().positionsAfter().orElse(0);
            figures.recoveryLeadDays[number] = assessment.permits().recoveryLeadDays();
            verdict.findFirst().ifPresent(reason -> figures.exclusions[number] = place(reason));
            figures.cautions[number] = (byte) Math.min(Byte.MAX_VALUE, verdict.cautionCount());
            Duct duct = assessment.span().duct();
            figures.flags[number] = (byte) ((duct.isSpare() ? SPARE : 0)
                    | (duct.contentsSource() == ContentsSource.ASSUMED ? ASSUMED : 0)
                    | (verdict.isPullDoubtful() ? DOUBTFUL : 0)
                    | (verdict.isBendTight() ? TIGHT_BEND : 0));
        }

        /** Takes the draws of the simulation in which a span is feasible. */
        public void addDraws(int number, long feasible) {
            figures.feasibleDraws[number] = feasible;
        }

        /** Returns the figures once all spans have been added. */
        public SpanFigures figures() {
            return figures;
        }

        /** Returns the place of a reason, from 1, among those met in this run, of which there are few. */
        private byte place(Exclusion reason) {
            int place = figures.reasons.indexOf(reason);
            return place < 0 ? placeOfNew(reason) : (byte) (place + 1);
        }

        private synchronized byte placeOfNew(Exclusion reason) {
            if (!figures.reasons.contains(reason)) {
                figures.reasons.add(reason);
            }
            return (byte) (figures.reasons.indexOf(reason) + 1);
        }
    }
}
