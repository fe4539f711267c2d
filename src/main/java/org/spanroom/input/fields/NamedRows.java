package org.spanroom.input.fields;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.spanroom.config.NearestWord;

/**
 * The rows of one table of the catalog by the words of their names: case, the order of the words and the usual ways of
 * writing inch, schedule, SDR and fibers do not matter.
 */
final class NamedRows<T> {
    private static final int NEAREST_SHOWN = 3;
    private static final int MOST_REMEMBERED = 10_000;
    private static final Pattern INCH = Pattern.compile("(?:\"|''|\u2033|\u201D|-?inch(?:es)?\\b|(?<=\\d)-?in\\b\\.?)");
    private static final Pattern SPLIT_FRACTION = Pattern.compile("(?<=\\d) (?=\\d+/\\d)");
    private static final Pattern SERIES = Pattern.compile("\\b(sch|sdr)[ -]*(?=\\d)");
    private static final Pattern FIBERS = Pattern.compile("(?<=\\d)[ -]*(?:f|ct|fib(?:er|re)s?)\\b");
    private static final Pattern BRITISH_FIBER = Pattern.compile("\\bfibre(?=s?\\b)");

    private final Map<String, List<T>> byWords = new TreeMap<>();
    private final List<String> names = new ArrayList<>();
    private final Map<String, List<T>> asked = new HashMap<>();

    void add(T row, String name, String... otherSpellings) {
        names.add(name);
        put(row, name);
        for (String spelling : otherSpellings) {
            put(row, spelling);
        }
    }

    private void put(T row, String spelling) {
        List<T> rows = byWords.computeIfAbsent(words(spelling), key -> new ArrayList<>());
        if (!rows.contains(row)) {
            rows.add(row);
        }
    }

    /** Returns every row that may be meant: one, none, or several where the text does not say enough. */
    List<T> find(String text) {
        if (asked.size() > MOST_REMEMBERED) {
            asked.clear();
        }
        return asked.computeIfAbsent(text, key -> byWords.getOrDefault(words(key), List.of()));
    }

    /** Returns what to say of a name that no row has. */
    String unknown(String text) {
        return names.isEmpty()
                ? "'" + text + "' cannot be looked up: the config names no catalog"
                : "the catalog has no row '" + text + "'; the nearest are "
                        + String.join(", ", NearestWord.nearest(text, names, NEAREST_SHOWN));
    }

    private static String words(String text) {
        String folded = text.strip().toLowerCase(Locale.ROOT).replace("schedule", "sch");
        folded = INCH.matcher(folded).replaceAll(" in ");
        folded = SERIES.matcher(folded).replaceAll("$1");
        folded = FIBERS.matcher(folded).replaceAll(" fibers");
        folded = BRITISH_FIBER.matcher(folded).replaceAll("fiber");
        folded = folded.replaceAll("[\\s,;]+", " ").strip();
        folded = SPLIT_FRACTION.matcher(folded).replaceAll("-");
        return Arrays.stream(folded.split(" ", -1)).sorted().collect(Collectors.joining(" "));
    }
}
