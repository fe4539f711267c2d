package org.spanroom.config;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Finds the right word that someone may have meant by a wrong one. */
public final class NearestWord {
    private static final double LARGEST_CHANGE_RATIO = 0.5;
    private static final double ALMOST_CHANGE_RATIO = 1.0 / 3;
    private static final int LONGEST_WORD = 100;

    private NearestWord() {}

    /** Finds the word with the smallest edit distance (Levenshtein, with swapped neighbors as one change), unless half of the longer word would have to change. */
    public static Optional<String> find(String wrong, Collection<String> right) {
        return find(wrong, right, LARGEST_CHANGE_RATIO);
    }

    /** Finds the word that was almost certainly meant: less than a third of the longer word would have to change. */
    public static Optional<String> findAlmost(String wrong, Collection<String> right) {
        return find(wrong, right, ALMOST_CHANGE_RATIO);
    }

    private static Optional<String> find(String wrong, Collection<String> right, double changeRatio) {
        if (wrong.length() > LONGEST_WORD) {
            return Optional.empty();
        }
        return right.stream()
                .min(Comparator.<String>comparingInt(word -> distance(wrong, word))
                        .thenComparing(word -> word))
                .filter(word -> distance(wrong, word) < changeRatio * Math.max(word.length(), wrong.length()));
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

    /** Changes of one letter, and of two neighbors that have changed places, count one each. */
    private static int distance(String one, String other) {
        String a = one.toLowerCase(Locale.ROOT);
        String b = other.toLowerCase(Locale.ROOT);
        int[] beforeLast = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int[] free = beforeLast;
            beforeLast = last;
            last = row;
            row = free;
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int substituted = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(substituted, Math.min(last[j], row[j - 1]) + 1);
                if (i > 1 && j > 1 && areSwapped(a, i, b, j)) {
                    row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
                }
            }
        }
        return row[b.length()];
    }

    private static boolean areSwapped(String a, int i, String b, int j) {
        return a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
    }
}
