package org.spanroom.config;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Finds the right word that someone may have meant by a wrong one. */
public final class NearestWord {
    private static final double LARGEST_CHANGE_RATIO = 0.5;
    private static final int LONGEST_WORD = 100;

    private NearestWord() {}

    /** Finds the word with the smallest edit distance (Levenshtein), unless half of the longer word would have to change. */
    public static Optional<String> find(String wrong, Collection<String> right) {
        if (wrong.length() > LONGEST_WORD) {
            return Optional.empty();
        }
        return right.stream()
                .min(Comparator.<String>comparingInt(word -> distance(wrong, word))
                        .thenComparing(word -> word))
                .filter(word -> distance(wrong, word) < LARGEST_CHANGE_RATIO * Math.max(word.length(), wrong.length()));
    }

    /** Returns this many words that are nearest to a wrong one, the nearest first. */
    public static List<String> nearest(String wrong, Collection<String> right, int most) {
        return right.stream()
                .sorted(Comparator.<String>comparingInt(word -> distance(wrong, word))
                        .thenComparing(word -> word))
                .limit(most)
                .toList();
    }

    /** Returns a remedy: the nearest word, or all there are. */
    static String remedy(String wrong, Collection<String> right) {
        return find(wrong, right)
                .map(word -> "Did you mean '" + word + "'?")
                .orElseGet(() -> "Possible: " + String.join(", ", right) + ".");
    }

    private static int distance(String one, String other) {
        String a = one.toLowerCase(Locale.ROOT);
        String b = other.toLowerCase(Locale.ROOT);
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int substituted = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(substituted, Math.min(row[j], row[j - 1]) + 1);
            }
        }
        return row[b.length()];
    }
}
