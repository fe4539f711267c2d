package org.spanroom.output.explain;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * One fact of an explanation.
 *
 * @param key for programs, with the unit at its end
 * @param label for people
 * @param evidence one word or phrase on what the value rests on; empty where other parts say it
 */
public record ExplanationItem(String key, String label, ExplanationValue value, String evidence)
        implements ExplanationPart {
    /** A fact without evidence of its own. */
    public ExplanationItem(String key, String label, ExplanationValue value) {
        this(key, label, value, "");
    }

    public static ExplanationItem number(String key, String label, double value, int decimals, String unit) {
        return new ExplanationItem(key, label, ExplanationValue.number(value, decimals, unit));
    }

    public static ExplanationItem whole(String key, String label, int count) {
        return number(key, label, count, 0, "");
    }

    public static ExplanationItem whole(String key, String label, OptionalInt count) {
        return number(key, label, count.isPresent() ? count.getAsInt() : Double.NaN, 0, "");
    }

    public static ExplanationItem text(String key, String label, String text) {
        return new ExplanationItem(key, label, ExplanationValue.text(text));
    }

    /** Makes a fact of a word of a fixed list, by its key. */
    public static ExplanationItem word(String key, String label, String word) {
        return new ExplanationItem(key, label, ExplanationValue.word(word));
    }

    public static ExplanationItem word(String key, String label, Enum<?> word) {
        return word(key, label, word.name().toLowerCase(Locale.ROOT));
    }

    public static ExplanationItem flag(String key, String label, boolean flag) {
        return new ExplanationItem(key, label, new ExplanationValue.Flag(flag));
    }

    /** Makes a fact of texts from the data. */
    static ExplanationItem texts(String key, String label, List<String> texts) {
        return several(key, label, texts.stream().map(ExplanationValue::text).toList());
    }

    /** Makes a fact of words of a fixed list, by their keys. */
    static ExplanationItem words(String key, String label, List<String> words) {
        return several(key, label, words.stream().map(ExplanationValue::word).toList());
    }

    private static ExplanationItem several(String key, String label, List<ExplanationValue> values) {
        return new ExplanationItem(key, label, new ExplanationValue.Several(values));
    }

    public ExplanationItem withEvidence(String why) {
        return new ExplanationItem(key, label, value, why);
    }

    @Override
    public boolean isShown() {
        return !label.isEmpty() && !(value instanceof ExplanationValue.Absent);
    }
}
