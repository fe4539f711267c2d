package org.spanroom.model.permit;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.spanroom.model.CalendarDay;
import org.spanroom.model.Check;

/**
 * Which permits work needs, everywhere and in each kind of zone.
 *
 * <p>The shipped permits and days are illustrative; rules differ from city to city, and an owner replaces them.
 *
 * @param onDate the run date, e.g. 2027-03-31; empty for today
 * @param expiredCount whether zones count whose last day is before that day
 * @param toComeCount whether zones count whose first day lies after that day
 * @param sliverM a stretch inside a zone shorter than this is treated as a flaw of the drawing and does not count; nor does a gap
 *     between two stretches
 * @param zoneToleranceM each zone reaches so far beyond its outline: how accurately lines are drawn
 * @param everywhere what work needs inside and outside of zones
 * @param kinds by key; further keys are further kinds
 * @param issuedByCrew keys of permits that the crew's own entry supervisor issues on the day of work: needed, and not applied for
 */
public record PermitSettings(
        String onDate,
        boolean expiredCount,
        boolean toComeCount,
        double sliverM,
        double zoneToleranceM,
        WorkPermits everywhere,
        SortedMap<String, ZoneKind> kinds,
        List<String> issuedByCrew) {
    /** The kind of a zone whose own kind is not recorded or not known. */
    public static final String OTHER = "other";

    /** More would be no error of drawing. */
    private static final double MOST_TOLERANCE_M = 100;

    private static final Pattern KEY = Pattern.compile("[a-z][a-z0-9_]*");

    public PermitSettings {
        onDate = onDate.strip();
        CalendarDay.demandIfAny("onDate", onDate);
        Check.notNegative("sliverM", sliverM);
        Check.within("zoneToleranceM", zoneToleranceM, 0, MOST_TOLERANCE_M);
        kinds = Collections.unmodifiableSortedMap(new TreeMap<>(kinds));
        keys("kinds", List.copyOf(kinds.keySet()));
        issuedByCrew = keys("issuedByCrew", issuedByCrew);
        if (!kinds.containsKey(OTHER)) {
            throw new IllegalArgumentException("kinds must have the key " + OTHER + ", for zones of unknown kind");
        }
        words(kinds);
    }

    /** Finds the run date. */
    public Optional<LocalDate> findOnDate() {
        return CalendarDay.find(onDate);
    }

    public PermitSettings withOnDate(LocalDate day) {
        return new PermitSettings(
                day.toString(), expiredCount, toComeCount, sliverM, zoneToleranceM, everywhere, kinds, issuedByCrew);
    }

    /** Returns whether a rule whose last day is the given one is over on the run date. */
    public boolean isExpired(Optional<LocalDate> until) {
        Optional<LocalDate> today = findOnDate();
        return today.isPresent() && until.isPresent() && until.get().isBefore(today.get());
    }

    /** Returns whether a rule whose first day is the given one has not begun on the run date. */
    public boolean isToCome(Optional<LocalDate> from) {
        Optional<LocalDate> today = findOnDate();
        return today.isPresent() && from.isPresent() && from.get().isAfter(today.get());
    }

    /** Returns whether a zone's last day is before the run date, and such zones do not count. */
    public boolean isOver(Zone zone) {
        return !expiredCount && isExpired(zone.until());
    }

    /** Returns whether a zone does not count yet, because its first day lies after the run date. */
    public boolean isAwaited(Zone zone) {
        return !toComeCount && isToCome(zone.from());
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
                        throw new IllegalArgumentException("kinds must not share words: '" + word
                                + "' is listed for both " + before + " and " + key);
                    }
                }));
        return Collections.unmodifiableMap(kindByWord);
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
