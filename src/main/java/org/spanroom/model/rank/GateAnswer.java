package org.spanroom.model.rank;

/**
 * What one gate says of a span, with its evidence.
 *
 * @param gate the gate, by the reason that it excludes for
 * @param open whether the config has the gate open, so that the reason excludes nothing
 * @param holds whether the reason applies to the span
 * @param evidence what the answer rests on, in one phrase
 */
public record GateAnswer(Exclusion gate, boolean open, boolean holds, String evidence) {
    /** Returns one word: passed, excluded, or open where the reason applies and the gate is open. */
    public String word() {
        if (!holds) {
            return "passed";
        }
        return open ? "open" : "excluded";
    }
}
