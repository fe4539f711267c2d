package org.spanroom.bend;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.bend.BendSettings;

/**
 * The noise of a very long line, from a few stretches of it.
 *
 * <p>A line is read up to twelve times, by kinds of noise and until the deviation is that which the path leaves. That many vertices
 * need not all be read so often to say what their noise is: {@value #STRETCHES} stretches of {@value #STRETCH_VERTICES} vertices,
 * evenly apart, give a deviation to one percent. So the whole line is read once, under the noise that they show.
 */
final class StretchNoise {
    /** No line of fewer vertices is read by stretches. */
    static final int FEWEST_VERTICES = 20_000;

    /** Odd, so that there is a majority. */
    private static final int STRETCHES = 9;

    private static final int STRETCH_VERTICES = 1000;

    private StretchNoise() {}

    /** Returns whether a line is so long that stretches of it show its noise. */
    static boolean suffices(Trace trace) {
        return trace.size() >= FEWEST_VERTICES;
    }

    /**
     * Returns noise of the kind of most stretches: the root mean square of their deviations, the median of their distances of wander.
     * Where it is like what neighboring vertices of the whole line show, which is taken, it is that.
     */
    static Noise of(Trace trace, Noise plain, BendSettings settings) {
        List<Noise> wandering = new ArrayList<>(STRETCHES);
        List<Noise> independent = new ArrayList<>(STRETCHES);
        for (int stretch = 0; stretch < STRETCHES; stretch++) {
            int from = (int) ((long) stretch * (trace.size() - STRETCH_VERTICES) / (STRETCHES - 1));
            Noise noise = ofStretch(trace, from, settings);
            (noise.wanders() ? wandering : independent).add(noise);
        }
        double priorM = NoiseLevel.priorM(settings);
        if (wandering.size() > independent.size()) {
            return Noise.wandering(trace, rootMeanSquareM(wandering), priorM, medianWanderM(wandering));
        }
        Noise shown = Noise.independent(rootMeanSquareM(independent), priorM);
        return shown.isLike(plain) ? plain : shown;
    }

    private static Noise ofStretch(Trace trace, int from, BendSettings settings) {
        Trace stretch = trace.stretch(from, from + STRETCH_VERTICES);
        double priorM = NoiseLevel.priorM(settings);
        Noise prior = Noise.independent(priorM, priorM);
        double rawM = NoiseLevel.rawM(stretch, prior);
        Noise plain = NoiseLevel.estimate(stretch, prior, rawM, settings);
        Noise noise = new PathChoice(stretch, settings, Fits.MOST_KNOWN)
                .choose(plain, rawM)
                .noise();
        trace.countVisits(stretch.visits());
        return noise;
    }

    private static double rootMeanSquareM(List<Noise> noises) {
        double sumM2 = 0;
        for (Noise noise : noises) {
            sumM2 += noise.varianceM2();
        }
        return Math.sqrt(sumM2 / noises.size());
    }

    private static double medianWanderM(List<Noise> noises) {
        double[] sortedM =
                noises.stream().mapToDouble(noise -> noise.wanderM).sorted().toArray();
        return sortedM[sortedM.length / 2];
    }
}
