package org.spanroom.rank;

/** In which samples a span may be among the top at all, by the most that it can score in each; whether it is there takes drawing. */
final class TopChance {
    private final boolean[][] bySituation;
    private final boolean[] byAny;

    private TopChance(boolean[][] bySituation, boolean[] byAny) {
        this.bySituation = bySituation;
        this.byAny = byAny;
    }

    /**
     * Looks at a span.
     *
     * @param thresholds what it takes to be among the top by sample, in turn
     * @param samples how many are looked at; fewer if they repeat
     */
    static TopChance of(Simulation simulation, SpanOutlook span, double[] thresholds, int samples) {
        boolean repeats = true;
        for (SpanOutlook.Situation situation : span.situations()) {
            repeats &= thresholds.length % simulation.period(situation) == 0;
        }
        int period = repeats ? Math.min(samples, thresholds.length) : samples;
        double[][] most = simulation.mostPoints(span, period);
        boolean[][] bySituation = new boolean[most.length][period];
        boolean[] byAny = new boolean[period];
        for (int number = 0; number < most.length; number++) {
            for (int sample = 0; sample < period; sample++) {
                boolean may = TopScores.isTop(most[number][sample], thresholds[sample % thresholds.length]);
                bySituation[number][sample] = may;
                byAny[sample] |= may;
            }
        }
        return new TopChance(bySituation, byAny);
    }

    /** Returns the largest share of so many samples in which the span can be among the top. */
    double mostRatio(int samples) {
        int turns = samples / byAny.length;
        int rest = samples % byAny.length;
        int open = 0;
        for (int sample = 0; sample < byAny.length; sample++) {
            open += byAny[sample] ? turns + (sample < rest ? 1 : 0) : 0;
        }
        return open / (double) samples;
    }

    /** Returns whether the span may be among the top in a sample. */
    boolean isOpen(int sample) {
        return byAny[sample % byAny.length];
    }

    /** Returns the same for one of its situations. */
    boolean isOpen(int situation, int sample) {
        return bySituation[situation][sample % byAny.length];
    }

    /** Returns for each situation whether the span may be among the top with it in any sample. */
    boolean[] openSituations() {
        boolean[] open = new boolean[bySituation.length];
        for (int situation = 0; situation < open.length; situation++) {
            for (boolean may : bySituation[situation]) {
                open[situation] |= may;
            }
        }
        return open;
    }
}
