package org.spanroom.output.sheet;

import org.spanroom.model.pull.PauseSettings;

/**
 * The force, below the one to stop at, at which a crew pauses a pull because it goes much worse than calculated. Common practice, no
 * source.
 */
final class PauseLevel {
    /** What to do at it; a sentence of the box of limits. */
    static final String WHAT_TO_DO =
            "PAUSE force, by pull below: at it the pull goes much worse than calculated. Stop the machine, keep the hold, and find the "
                    + "reason (friction, bend, splice, debris, wrong innerduct or end). Lubricate; go on only once it is known. STOP stays the limit.";

    /** Two forces that read the same on a gauge; at a PAUSE so near to STOP there is nothing between them. */
    private static final double SAME_RATIO = 0.95;

    private final SheetUnits units;
    private final PauseSettings settings;

    PauseLevel(SheetUnits units, PauseSettings settings) {
        this.units = units;
        this.settings = settings;
    }

    /** Returns the level of a force in both systems, or that it is at the limit. */
    String words(String what, double plannedN, double stopN) {
        double levelN = settings.levelN(plannedN, stopN);
        if (plannedN >= stopN) {
            return what + ": none; the calculated force is not below STOP, so prove first that it can be done";
        }
        return levelN >= SAME_RATIO * stopN
                ? what + ": at STOP, which is near the calculated force"
                : what + " " + units.both(levelN, 0, "N");
    }
}
