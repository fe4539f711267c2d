package org.spanroom.output;

/** The sentence that results carry which people plan work from. */
public final class PlanningCaution {
    /** One sentence, without a line break. */
    public static final String TEXT = "Planning figures only; they do not authorize vault entry or pulling.";

    private PlanningCaution() {}
}
