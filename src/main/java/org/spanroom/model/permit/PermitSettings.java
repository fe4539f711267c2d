package org.spanroom.model.permit;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.spanroom.model.Check;

/**
 * Which permits work needs, everywhere and in each kind of zone.
 *
 * <p>The shipped permits and days are illustrative; rules differ from city to city, and an owner replaces them.
 *
 * @param onDate the day that the run is made for, as 2027-03-31; empty for the day on which it is made
 * @param expiredCount whether zones count whose last day lies before that day
 * @param sliverM a stretch inside a zone shorter than this is taken for a flaw of the drawing and does not count
 * @param everywhere what work needs inside and outside of zones
 * @param kinds by key; further keys are further kinds
 */
public record PermitSettings(
        String onDate, boolean expiredCount, double sliverM, Base everywhere, SortedMap<String, ZoneKind> kinds) {
    /** The kind of a zone whose own kind is not recorded or not known. */
    public static final String OTHER = "other";

    private static final Pattern KEY = Pattern.compile("[a-z][a-z0-9_]*");

    /** What work needs wherever it is done. */
    public record Base(List<String> recovery, List<String> newBuild, int recoveryLeadDays, int newBuildLeadDays) {
        public Base {
            recovery = keys("recovery", recovery);
            newBuild = keys("newBuild", newBuild);
            Check.notNegative("recoveryLeadDays", recoveryLeadDays);
            Check.notNegative("newBuildLeadDays", newBuildLeadDays);
        }
    }

    public PermitSettings {
        onDate = onDate.strip();
        if (!onDate.isEmpty() && day(onDate).isEmpty()) {
            throw new IllegalArgumentException("onDate must be a day written as 2027-03-31, was '" + onDate + "'");
        }
        Check.notNegative("sliverM", sliverM);
        kinds = Collections.unmodifiableSortedMap(new TreeMap<>(kinds));
        keys("kinds", List.copyOf(kinds.keySet()));
        if (!kinds.containsKey(OTHER)) {
            throw new IllegalArgumentException("kinds must have the key " + OTHER + ", for zones of no known kind");
        }
        words(kinds);
    }

    /** Finds the day that the run is made for. */
    public Optional<LocalDate> findOnDate() {
        return onDate.isEmpty() ? Optional.empty() : day(onDate);
    }

    public PermitSettings withOnDate(LocalDate day) {
        return new PermitSettings(day.toString(), expiredCount, sliverM, everywhere, kinds);
    }

    /** Returns whether a rule whose last day is the given one is over on the day that the run is made for. */
    public boolean isExpired(Optional<LocalDate> until) {
        Optional<LocalDate> today = findOnDate();
        return today.isPresent() && until.isPresent() && until.get().isBefore(today.get());
    }

    /** Returns the rules of a kind; those of {@link #OTHER} for one that is not known. */
    public ZoneKind kind(String key) {
        ZoneKind kind = kinds.get(key);
        return kind == null ? kinds.getOrDefault(OTHER, ZoneKind.NONE) : kind;
    }

    /**
     * Returns the kind that each word of the data means: its key, with or without marks between its words, and the words given
     * for it; all in lower case without blanks around.
     */
    public Map<String, String> kindByWord() {
        return words(kinds);
    }

    private static Map<String, String> words(SortedMap<String, ZoneKind> kinds) {
        var kindByWord = new TreeMap<String, String>();
        kinds.forEach((key, kind) -> Stream.concat(Stream.of(key, key.replace('_', ' ')), kind.words().stream())
                .map(word -> word.strip().toLowerCase(Locale.ROOT))
                .forEach(word -> {
                    String before = kindByWord.put(word, key);
                    if (before != null && !before.equals(key)) {
                        throw new IllegalArgumentException(
                                "kinds must not share words: '" + word + "' stands for both " + before + " and " + key);
                    }
                }));
        return Collections.unmodifiableMap(kindByWord);
    }

    private static Optional<LocalDate> day(String text) {
        try {
            return Optional.of(LocalDate.parse(text));
        } catch (DateTimeParseException e) {
            return Optional.empty();
        }
    }

    static List<String> keys(String name, List<String> keys) {
        for (String key : keys) {
            if (!KEY.matcher(key).matches()) {
                throw new IllegalArgumentException(
                        name + " must be keys of small letters, digits and _, was '" + key + "'");
            }
        }
        return keys.stream().distinct().sorted().toList();
    }
}
