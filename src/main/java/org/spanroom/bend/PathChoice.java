package org.spanroom.bend;

import org.spanroom.model.bend.BendSettings;

/**
 * Chooses the path and the kind of noise that explain a drawn line best.
 *
 * <p>Method: three kinds of noise are tried where the line gives reason to: vertices off each by itself, vertices exact, and
 * noise that wanders. Each finds its own path and its own deviation; the least cost wins, which is twice the negative
 * logarithm of the likelihood, the prior of the deviation and the price of the bends together. In it a deviation counts
 * with as many powers as observations are left free by the unknowns, so that a path cannot buy exactness with bends.
 */
final class PathChoice {
    /** What a corner must save in the first cut, in variances; low, since needless corners are dropped later. */
    private static final double CORNER_PRICE = 9;

    private static final int MOST_PASSES = 3;

    /** What exact vertices must save over common noise: twice the logarithm of their odds, one line in seven. */
    private static final double EXACT_PRICE = 4;

    /** What wandering noise must save: the same for one line in twenty, its distance being found from the line too. */
    private static final double WANDER_PRICE = 6;

    /** Fewer vertices do not show whether they are off together. */
    private static final int FEWEST_WANDERING = 12;

    private static final double SLIGHT_RAD = Math.toRadians(10);

    /** What refitting a path to another kind of noise may save. */
    private static final double WANDER_SLACK = 5;

    /** What a bend more must save at least where vertices are exact: its price, and a little for the observations that it uses up. */
    private static final double BEND_WORTH = 15;

    /** Where the search for the distance of wander begins, and what it chooses from: factors of 2, finer does not matter. */
    private static final double FIRST_WANDER_M = 30;

    private static final double[] WANDERS_M = {10, 20, 40, 80, 160};

    private final Trace trace;
    private final BendSettings settings;
    private final int mostKnownFits;

    PathChoice(Trace trace, BendSettings settings, int mostKnownFits) {
        this.trace = trace;
        this.settings = settings;
        this.mostKnownFits = mostKnownFits;
    }

    /** Returns the path that explains the line best under a noise that is known. */
    Explanation under(Noise noise) {
        var fits = new Fits(trace, noise, mostKnownFits);
        TangentChain chain = fit(fits);
        return new Explanation(chain, fits, cost(chain, noise));
    }

    /** Returns the best explanation; takes the noise to begin with and what neighboring vertices show by themselves. */
    Explanation choose(Noise plain, double rawM) {
        Explanation best = explain(plain, 0);
        double leastM = NoiseLevel.leastM(settings);
        if (best.noise().sigmaM > 2 * leastM && rawM < 0.5 * best.noise().sigmaM) {
            Noise exact = Noise.independent(leastM, leastM);
            best = mayBe(exact, best) ? better(best, explain(exact, EXACT_PRICE)) : best;
        }
        if (mayWander(best)) {
            double priorM = NoiseLevel.priorM(settings);
            Noise kind = Noise.wandering(trace, priorM, priorM, FIRST_WANDER_M);
            best = better(best, explain(NoiseLevel.estimate(trace, kind, settings), WANDER_PRICE));
        }
        return best;
    }

    private static Explanation better(Explanation one, Explanation other) {
        return other.cost() < one.cost() ? other : one;
    }

    /** Returns whether vertices may be exact: the same path must be near as good so, or leave so much that more bends may pay. */
    private boolean mayBe(Noise exact, Explanation best) {
        double squares = best.chain().squares() / exact.varianceM2();
        return EXACT_PRICE + cost(best.chain(), exact) - Math.max(0, squares - BEND_WORTH) < best.cost();
    }

    /**
     * Returns whether noise may wander: the offsets that the best path leaves must be near as likely so, if bends so slight that
     * they may be noise themselves cost nothing.
     */
    private boolean mayWander(Explanation best) {
        TangentChain chain = best.chain();
        if (trace.size() < FEWEST_WANDERING || best.noise().sigmaM <= 2 * NoiseLevel.leastM(settings)) {
            return false;
        }
        double priorM = NoiseLevel.priorM(settings);
        double[] offM = chain.offsetsM();
        Noise kind = likelyWander(offM, Noise.wandering(trace, priorM, priorM, FIRST_WANDER_M));
        double squares = kind.squares(offM);
        int free = Math.max(1, chain.seen() - chain.unknowns());
        Noise wandering = kind.withSigma(NoiseLevel.blendM(Math.sqrt(squares / free), free, kind, settings));
        double slight = Noise.BEND_PRICE * chain.turnsBelow(SLIGHT_RAD);
        return WANDER_PRICE + cost(chain, wandering, squares) - slight < best.cost() + WANDER_SLACK;
    }

    private Explanation explain(Noise start, double price) {
        Noise noise = start;
        var fits = new Fits(trace, noise, mostKnownFits);
        TangentChain chain = fit(fits);
        for (int pass = 0; pass < MOST_PASSES; pass++) {
            Noise left = noiseLeft(chain, noise);
            if (left.isLike(noise)) {
                break;
            }
            noise = left;
            fits = new Fits(trace, noise, mostKnownFits);
            chain = fit(fits);
        }
        return new Explanation(chain, fits, price + cost(chain, noise));
    }

    private TangentChain fit(Fits fits) {
        int[] joints = CornerSearch.cut(trace, fits.noise, CORNER_PRICE, 2 * settings.drawingToleranceM());
        Corners corners = new TurnSelection(fits, settings).select(joints);
        TangentChain chain =
                fits.fit(new Fits.Part(corners, 0, trace.size() - 1)).chain().copy();
        ChainFit.sharpenLone(chain, fits.noise.sigmaM);
        return chain;
    }

    /** Returns the noise that the fitted path leaves, or the former estimate where too few vertices speak. */
    private Noise noiseLeft(TangentChain chain, Noise noise) {
        int free = chain.seen() - chain.unknowns();
        if (free < 8) {
            return noise;
        }
        Noise kind = noise.wanders() ? likelyWander(chain.offsetsM(), noise) : noise;
        double squares = noise.wanders() ? kind.squares(chain.offsetsM()) : chain.squares();
        return kind.withSigma(NoiseLevel.blendM(Math.sqrt(squares / free), free, kind, settings));
    }

    private Noise likelyWander(double[] offM, Noise noise) {
        Noise best = noise;
        double least = Double.POSITIVE_INFINITY;
        for (double wanderM : WANDERS_M) {
            Noise kind = Noise.wandering(trace, noise.sigmaM, noise.priorM, wanderM);
            double cost = offM.length * Math.log(kind.squares(offM)) + kind.logDeterminant();
            if (cost < least) {
                least = cost;
                best = kind;
            }
        }
        return best;
    }

    private double cost(TangentChain chain, Noise noise) {
        return cost(chain, noise, chain.squares());
    }

    private double cost(TangentChain chain, Noise noise, double squaresM2) {
        double priorM = NoiseLevel.priorM(settings);
        double free = Math.max(0, chain.seen() - chain.unknowns()) + NoiseLevel.PRIOR_VERTICES;
        double squares = squaresM2 + NoiseLevel.PRIOR_VERTICES * noise.priorM * noise.priorM;
        return squares / noise.varianceM2()
                + 2 * free * Math.log(noise.sigmaM / priorM)
                + noise.logDeterminant()
                + Noise.BEND_PRICE * chain.arcs;
    }
}
