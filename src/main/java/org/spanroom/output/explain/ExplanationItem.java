package org.spanroom.output.explain;

/**
 * One fact of an explanation.
 *
 * @param key for programs, with the unit at its end
 * @param label for people
 * @param evidence one word or phrase on what the value rests on; empty where other parts say it
 */
public record ExplanationItem(String key, String label, ExplanationValue value, String evidence)
        implements ExplanationPart {
    @Override
    public boolean isShown() {
        return !label.isEmpty() && !(value instanceof ExplanationValue.Absent);
    }
}
