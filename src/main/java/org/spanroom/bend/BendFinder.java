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
    private final boolean screening;

    public BendFinder(BendSettings settings) {
        this(settings, true);
    }

    /** For tests: a finder that does not screen fits every line, every part of it each time that it is needed, and finds the same. */
    BendFinder(BendSettings settings, boolean screening) {
        this.settings = settings;
        this.screening = screening;
    }

    /**
     * Returns the bends along a line in meters, in order from its first vertex.
     *
     * @param insideDiameterMm bore of the duct, by which the sweep radius is assumed where the line shows none
     */
    public Bends find(Line ground, double insideDiameterMm) {
        if (screening && ground.size() < 3) {
            return Bends.NONE;
        }
        return find(Trace.of(ground), settings.sweepRadiusM(insideDiameterMm));
    }

    Bends find(Trace trace, double sweepRadiusM) {
        if (trace.size() < 3) {
            return Bends.NONE;
        }
        if (screening && isSurelyStraight(trace)) {
            return Bends.NONE;
        }
        double priorM = NoiseLevel.priorM(settings);
        Noise prior = Noise.independent(priorM, priorM);
        double rawM = NoiseLevel.rawM(trace, prior);
        Noise plain = NoiseLevel.estimate(trace, prior, rawM, settings);
        double shownM = Math.max(NoiseLevel.leastM(settings), rawM);
        Noise least = plain.withSigma(Math.min(plain.sigmaM, shownM));
        if (trace.isStraight(0, trace.size() - 1, NoiseLevel.toleranceM(least, settings))) {
            return Bends.NONE;
        }
        var choice = new PathChoice(trace, settings, screening ? Fits.MOST_KNOWN : 0);
        Explanation best = StretchNoise.suffices(trace)
                ? choice.under(StretchNoise.of(trace, plain, settings))
                : choice.choose(plain, rawM);
        return new Placing(best, settings).place(sweepRadiusM);
    }

    /** Returns whether a line is straight whatever its noise; the line must be longer than any tolerance that its noise could allow. */
    private boolean isSurelyStraight(Trace trace) {
        int last = trace.size() - 1;
        return trace.distanceM(0, last) > settings.drawingToleranceM()
                && trace.isStraight(0, last, NoiseLevel.leastToleranceM(settings));
    }
}
