package org.spanroom.input.proposal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanroom.model.Unit;

/**
 * What a field's name says: its words as concepts of {@link Vocabulary}, unknown words as they are, and the unit at its end.
 *
 * <p>Names fall into words at marks, dots and changes of case, and glued words (FROMMH, Baujahr) where known words fill them whole.
 *
 * @param readings the words, once for each concept that a last word which is cut may mean
 * @param cut whether so little is left of the last word, as a Shapefile's ten letters leave it, that it may be another
 */
record FieldName(String name, List<Set<String>> readings, Optional<Unit> unit, boolean cut) {
    private static final int SHAPEFILE_NAME = 10;
    private static final int LEAST_GLUED = 4;
    private static final int LEAST_OF_CUT = 4;
    private static final int MOST_READINGS = 20;
    private static final int LEAST_NAMES_FOR_PREFIX = 4;
    private static final double PREFIX_SHARE = 0.6;
    private static final int MOST_PREFIXES = 3;

    /** Concepts that a field's name would lose with the prefix. */
    private static final Set<String> SAYING =
            Set.of("vault", "duct", "pipe", "route", "innerduct", "cable", "from", "to", "zone", "bank", "id", "name");

    FieldName {
        readings = List.copyOf(readings);
    }

    /** Returns the words of the first reading. */
    Set<String> words() {
        return readings.get(0);
    }

    /** Returns the names of one layer, without a prefix that most of them share. */
    static List<FieldName> all(List<String> names) {
        List<List<String>> parts =
                new ArrayList<>(names.stream().map(FieldName::parts).toList());
        for (int i = 0; i < MOST_PREFIXES; i++) {
            Optional<String> prefix = sharedPrefix(parts);
            if (prefix.isEmpty()) {
                break;
            }
            parts.replaceAll(
                    each -> each.size() > 1 && each.get(0).equals(prefix.get()) ? each.subList(1, each.size()) : each);
        }
        var all = new ArrayList<FieldName>();
        for (int i = 0; i < names.size(); i++) {
            all.add(of(names.get(i), parts.get(i)));
        }
        return all;
    }

    static FieldName of(String name) {
        return of(name, parts(name));
    }

    /** A shared first word says something of the layer, not of the fields; a word that is known is kept. */
    private static Optional<String> sharedPrefix(List<List<String>> names) {
        if (names.size() < LEAST_NAMES_FOR_PREFIX) {
            return Optional.empty();
        }
        Map<String, Integer> counts = new HashMap<>();
        names.stream().filter(parts -> parts.size() > 1).forEach(parts -> counts.merge(parts.get(0), 1, Integer::sum));
        return counts.entrySet().stream()
                .filter(entry -> entry.getValue() >= PREFIX_SHARE * names.size() && isOfTheLayer(entry.getKey()))
                .map(Map.Entry::getKey)
                .findFirst();
    }

    private static boolean isOfTheLayer(String word) {
        return Vocabulary.concept(word)
                .map(concept -> !SAYING.contains(concept))
                .orElse(true);
    }

    private static FieldName of(String name, List<String> parts) {
        boolean atLimit = name.length() == SHAPEFILE_NAME;
        String last = parts.isEmpty() ? "" : parts.get(parts.size() - 1);
        // What is left of a longer word may look like the unit m.
        int unitParts = atLimit && last.length() == 1 ? 0 : unitParts(parts);
        Optional<Unit> unit = unitParts == 0 ? Optional.empty() : Vocabulary.unit(joined(parts, unitParts));
        List<String> others = parts.subList(0, parts.size() - unitParts);
        var words = new LinkedHashSet<String>();
        others.forEach(part -> words.add(Vocabulary.concept(part).orElse(part)));
        words.remove("little");
        if (isNumberOfOne(others, words)) {
            words.add("id");
        }
        boolean lastIsCut = atLimit
                && unitParts == 0
                && (last.length() == 1 || Vocabulary.concept(last).isEmpty());
        if (!lastIsCut) {
            return new FieldName(name, List.of(Set.copyOf(words)), unit, atLimit && name.endsWith("_"));
        }
        words.remove(last);
        Set<String> concepts = Vocabulary.completions(last);
        boolean sure = concepts.size() == 1 && last.length() >= LEAST_OF_CUT;
        return new FieldName(name, readings(words, concepts, last), unit, !sure);
    }

    /** An innerduct number, with the number last, names one of several; a number of innerducts counts them. */
    private static boolean isNumberOfOne(List<String> parts, Set<String> words) {
        return parts.size() > 1
                && (words.contains("innerduct") || words.contains("cable"))
                && Vocabulary.concept(parts.get(parts.size() - 1)).equals(Optional.of("number"));
    }

    private static List<Set<String>> readings(Set<String> words, Set<String> concepts, String last) {
        var readings = new ArrayList<Set<String>>();
        for (String concept : concepts.isEmpty() || concepts.size() > MOST_READINGS ? Set.of(last) : concepts) {
            var reading = new LinkedHashSet<>(words);
            reading.add(concept);
            readings.add(Set.copyOf(reading));
        }
        return readings;
    }

    private static String joined(List<String> parts, int count) {
        return String.join("", parts.subList(parts.size() - count, parts.size()));
    }

    /** A unit may take up to two parts, as in lb_kft; a name that is nothing else has none. */
    private static int unitParts(List<String> parts) {
        for (int count = Math.min(2, parts.size() - 1); count >= 1; count--) {
            if (Vocabulary.unit(joined(parts, count)).isPresent()) {
                return count;
            }
        }
        return 0;
    }

    private static List<String> parts(String name) {
        String marked = name.replaceAll("(?<=\\p{Ll})(?=\\p{Lu})|(?<=\\p{Lu})(?=\\p{Lu}\\p{Ll})", "_");
        var parts = new ArrayList<String>();
        for (String part : Vocabulary.fold(marked).split("[^\\p{L}\\p{N}]+", -1)) {
            for (String word : Vocabulary.unit(part).isPresent() ? List.of(part) : List.of(part.split("\\p{N}+", -1))) {
                if (!word.isEmpty()) {
                    parts.addAll(
                            Vocabulary.isKnown(word) ? List.of(word) : unglued(word, name.length() == SHAPEFILE_NAME));
                }
            }
        }
        return List.copyOf(parts);
    }

    /** Returns the fewest known words that fill a word whole; of a word that may be cut, the last may be a beginning. */
    private static List<String> unglued(String word, boolean mayBeCut) {
        List<List<String>> best = new ArrayList<>(List.of(List.of()));
        for (int end = 1; end <= word.length(); end++) {
            List<String> shortest = List.of(word);
            boolean found = false;
            for (int start = 0; start < end; start++) {
                List<String> before = best.get(start);
                String tail = word.substring(start, end);
                boolean reached = start == 0 || !before.isEmpty();
                if (reached && Vocabulary.mayBeGlued(tail) && (!found || before.size() + 1 < shortest.size())) {
                    shortest = new ArrayList<>(before);
                    shortest.add(tail);
                    found = true;
                }
            }
            best.add(found ? shortest : List.of());
        }
        List<String> whole = best.get(word.length());
        if (!whole.isEmpty() && word.length() >= LEAST_GLUED) {
            return whole;
        }
        return mayBeCut ? cutTail(word, best) : List.of(word);
    }

    private static List<String> cutTail(String word, List<List<String>> best) {
        for (int start = word.length() - 2; start > 0; start--) {
            String tail = word.substring(start);
            if (!best.get(start).isEmpty() && Vocabulary.completions(tail).size() == 1) {
                var parts = new ArrayList<>(best.get(start));
                parts.add(tail);
                return List.copyOf(parts);
            }
        }
        return List.of(word);
    }
}
