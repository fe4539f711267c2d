package org.spanroom.output.explain;

import java.util.List;

/** A value of an explanation, which each renderer puts into words or numbers in its own way. */
public sealed interface ExplanationValue {
    /** What is not known or does not apply. */
    ExplanationValue ABSENT = new Absent();

    /**
     * A finite number.
     *
     * @param decimals digits after the point that programs get, and people of small numbers; from four on people get no zeros at the end
     * @param unit as people write it; empty for a count or a ratio
     */
    record Figure(double value, int decimals, String unit) implements ExplanationValue {
        /** Returns whether people are shown it without zeros at its end. */
        boolean isExact() {
            return decimals >= 4;
        }
    }

    /** A text from the data, or a sentence. */
    record Text(String text) implements ExplanationValue {}

    /**
     * A word of a fixed list.
     *
     * @param key for programs
     * @param words for people
     */
    record Word(String key, String words) implements ExplanationValue {}

    /** A yes or no. */
    record Flag(boolean value) implements ExplanationValue {}

    /** Several values in their order; there may be none. */
    record Several(List<ExplanationValue> values) implements ExplanationValue {
        public Several {
            values = List.copyOf(values);
        }
    }

    /** Sentences, each to be shown by itself. */
    record Sentences(List<String> sentences) implements ExplanationValue {
        public Sentences {
            sentences = List.copyOf(sentences);
        }
    }

    /** No value. */
    record Absent() implements ExplanationValue {}

    /** Returns a number, or nothing where it is not finite. */
    static ExplanationValue number(double value, int decimals, String unit) {
        return Double.isFinite(value) ? new Figure(value, decimals, unit) : ABSENT;
    }

    /** Returns a text, or nothing where it is blank. */
    static ExplanationValue text(String text) {
        return text.isBlank() ? ABSENT : new Text(text);
    }

    /** Returns a word whose parts are joined by underscores in its key; nothing where it is blank. */
    static ExplanationValue word(String key) {
        return key.isBlank() ? ABSENT : new Word(key, key.replace('_', ' '));
    }
}
