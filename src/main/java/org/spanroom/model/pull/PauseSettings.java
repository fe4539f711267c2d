package org.spanroom.model.pull;

import org.spanroom.model.Check;

/**
 * The force at which a crew pauses a pull and looks for the reason, because it goes much worse than calculated. Common practice, no source.
 *
 * @param plannedRatio times the planned force, which is that of breaking away with the friction that decides
 * @param leastStopRatio share of the force at which work stops; the level is not below it, so that small forces do not pause every pull
 */
public record PauseSettings(double plannedRatio, double leastStopRatio) {
    /** By these a crew pauses at no force below the one at which work stops. */
    public static final PauseSettings AT_STOP = new PauseSettings(1, 1);

    public PauseSettings {
        Check.within("plannedRatio", plannedRatio, 1, 100);
        Check.within("leastStopRatio", leastStopRatio, 1e-6, 1);
    }

    /**
     * Returns the force to pause at; never above the one to stop at.
     *
     * @param plannedN the planned force, in newtons
     * @param stopN the force at which work stops, in newtons
     */
    public double levelN(double plannedN, double stopN) {
        return Math.min(stopN, Math.max(plannedRatio * plannedN, leastStopRatio * stopN));
    }
}
