package org.spanroom.output.sheet;

import org.spanroom.model.pull.PauseSettings;

/**
 * The force, below the one to stop at, at which a crew pauses a pull because it goes much worse than calculated. Common practice, no
 * source.
 */
final class PauseLevel {
    /** What to do at it; a sentence of the box of limits. */
    static final String WHAT_TO_DO =
            "PAUSE force of a pull, below: stop the machine, keep the hold, and find why it goes much worse than calculated (friction, "
                    + "bend, splice, debris, wrong innerduct or end). None: first prove that the pull can be done.";

    /** Two forces that read the same on a gauge; at a PAUSE so near to STOP there is nothing between them. */
    private static final double SAME_RATIO = 0.95;

    private final SheetUnits units;
    private final PauseSettings settings;

    PauseLevel(SheetUnits units, PauseSettings settings) {
        this.units = units;
        this.settings = settings;
    }

    /** Returns the level in the unit of the crew, "at STOP" where it is next to the limit, or "none" where the planned force is not below the limit. */
    String words(double plannedN, double stopN) {
        if (plannedN >= stopN) {
            return "none";
        }
        double levelN = settings.levelN(plannedN, stopN);
        return levelN >= SAME_RATIO * stopN ? "at STOP" : units.one(levelN, 0, "N");
    }
}
