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
    private final BendSettings settings;

    public BendFinder(BendSettings settings) {
        this.settings = settings;
    }

    /**
     * Returns the bends along a line in meters, in order from its first vertex.
     *
     * @param insideDiameterMm bore of the duct, by which the sweep radius is assumed where the line shows none
     */
    public Bends find(Line ground, double insideDiameterMm) {
        return find(Trace.of(ground), settings.sweepRadiusM(insideDiameterMm));
    }

    Bends find(Trace trace, double sweepRadiusM) {
        if (trace.size() < 3) {
            return Bends.NONE;
        }
        double priorM = NoiseLevel.priorM(settings);
        Noise plain = NoiseLevel.estimate(trace, Noise.independent(priorM, priorM), settings);
        double shownM = Math.max(NoiseLevel.leastM(settings), NoiseLevel.rawM(trace, plain));
        Noise least = plain.withSigma(Math.min(plain.sigmaM, shownM));
        if (trace.isStraight(0, trace.size() - 1, NoiseLevel.toleranceM(least, settings))) {
            return Bends.NONE;
        }
        Explanation best = new PathChoice(trace, settings).choose(plain);
        return new Placing(best.chain(), settings, best.noise()).place(sweepRadiusM);
    }
}
