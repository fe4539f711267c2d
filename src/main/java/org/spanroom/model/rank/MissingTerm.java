package org.spanroom.model.rank;

import java.util.Locale;

/**
 * A term of the contents for which the data has no field, or no usable value.
 *
 * @param term our word
 * @param field the field that the config names for it, or empty
 * @param without how many have no value
 * @param among of how many
 * @param counted what is counted: spans of unknown contents, or routes as they were read
 * @param standsIn what the config lets stand in for it, or empty
 */
public record MissingTerm(String term, String field, long without, long among, String counted, String standsIn) {
    /** Returns one line for people. */
    public String inWords() {
        String why = field.isEmpty()
                ? "no field is named for it"
                : String.format(
                        Locale.ROOT,
                        "the field '%s' has no usable value on %,d of %,d %s",
                        field,
                        without,
                        among,
                        counted);
        return term + ": " + why + (standsIn.isEmpty() ? "; nothing stands in" : "; " + standsIn + " stands in");
    }
}
