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
 * @param standsIn the default of the config, or empty
 */
public record MissingTerm(String term, String field, long without, long among, String counted, String standsIn) {
    /** Returns one line for people. */
    public String inWords() {
        String why = field.isEmpty()
                ? "no field is mapped to it"
                : String.format(
                        Locale.ROOT,
                        "the field '%s' has no usable value in %,d of %,d %s",
                        field,
                        without,
                        among,
                        counted);
        return term + ": " + why + (standsIn.isEmpty() ? "; no value is assumed" : "; " + standsIn + " is assumed");
    }
}
