package org.spanroom.bend;

import org.spanroom.model.Line;
import org.spanroom.model.bend.BendSettings;
import org.spanroom.model.bend.Bends;

/**
 * Finds the bends of a span from its drawn line, through noise, duplicate and collinear vertices, arcs drawn as chords and
 * corners drawn as one vertex.
 *
 * <p>Method: the path of straights and tangent arcs that is most likely under normal noise, with a price for each bend
 * (see {@code methods.md}, <i>Bends from the drawn line</i>). Corners come from an optimal cut into straight pieces; runs of
 * corners that one arc explains become one bend; the whole path is then fitted at once, so that a deflection is the angle
 * between two fitted straights rather than a sum of noisy vertex angles. Time grows in proportion to the vertices. Safe for
 * use by several threads.
 */
public final class BendFinder {
    /** What a corner must save in the first cut, in variances; low, since needless corners are dropped later. */
    private static final double CORNER_PRICE = 9;

    private static final int MOST_PASSES = 3;

    private final BendSettings settings;

    public BendFinder(BendSettings settings) {
        this.settings = settings;
    }

    /**
     * Returns the bends along a line in metres, in order from its first vertex.
     *
     * @param insideDiameterMm bore of the duct, by which the sweep radius is assumed where the line shows none
     */
    public Bends find(Line ground, double insideDiameterMm) {
        return find(Trace.of(ground), settings.sweepRadiusM(insideDiameterMm));
    }

    Bends find(Trace trace, double sweepRadiusM) {
        if (trace.size() < 3 || trace.isStraight(0, trace.size() - 1, settings.drawingToleranceM())) {
            return Bends.NONE;
        }
        double sigmaM = NoiseLevel.estimateM(trace, settings);
        TangentChain chain = fit(trace, sigmaM);
        for (int pass = 0; pass < MOST_PASSES; pass++) {
            double leftM = noiseLeft(chain, sigmaM);
            if (leftM > 0.7 * sigmaM && leftM < 1.4 * sigmaM) {
                break;
            }
            sigmaM = leftM;
            chain = fit(trace, sigmaM);
        }
        return new Placing(chain, settings, sigmaM).place(sweepRadiusM);
    }

    private TangentChain fit(Trace trace, double sigmaM) {
        int[] joints = CornerSearch.cut(trace, sigmaM, CORNER_PRICE, 2 * settings.drawingToleranceM());
        Corners corners = new TurnSelection(trace, settings, sigmaM).select(joints);
        var chain = new TangentChain(trace, corners, 0, trace.size() - 1);
        ChainFit.fit(chain, sigmaM);
        return chain;
    }

    /** Returns the noise that the fitted path leaves, or the former estimate where too few vertices speak. */
    private double noiseLeft(TangentChain chain, double sigmaM) {
        int free = chain.trace.size() - chain.unknowns();
        return free < 8 ? sigmaM : NoiseLevel.blendM(Math.sqrt(chain.squares() / free), free, settings);
    }
}
