package org.spanroom.input.fieldbook;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.spanroom.config.NearestWord;

/** Words of ours in the cells of a field book, however they are written. */
final class FactWords {
    private static final Pattern BETWEEN_WORDS = Pattern.compile("[ -]+");

    private FactWords() {}

    /** Returns what to write in place of a word that is not one of the right ones: the nearest of them, or all. */
    static String meant(String word, List<String> right) {
        return NearestWord.find(word, right)
                .map(near -> "Did you mean " + near + "?")
                .orElse("Possible: " + String.join(", ", right) + ".");
    }

    /** Returns a word as ours are written: small letters, with _ where a user puts blanks or hyphens. */
    static String word(String text) {
        return BETWEEN_WORDS.matcher(text.strip().toLowerCase(Locale.ROOT)).replaceAll("_");
    }
}
