package org.spanroom.model;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;

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

    /** The kinds that the program comes with, in the order in which people list them. */
    public static final List<String> SHIPPED_KINDS =
            List.of("cut_ban", "night_only", "environmental", "heritage", "rail", "water", "school", "event", OTHER);

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

    /**
     * Returns the shipped settings; all illustrative. That street cuts are banned for years after paving, and that such bans
     * let existing conduit be used, has examples in municipal codes (methods, on permits); lead times are of the size that
     * such codes name, from 72 hours for a traffic plan to 60 days for a highway permit.
     */
    public static PermitSettings defaults() {
        return new PermitSettings(
                "",
                false,
                0.5,
                new Base(
                        keysOf("traffic_control, lane_closure, confined_space_entry"),
                        keysOf("traffic_control, lane_closure, confined_space_entry, street_cut, restoration"),
                        5,
                        60),
                shippedKinds());
    }

    private static SortedMap<String, ZoneKind> shippedKinds() {
        var kinds = new TreeMap<String, ZoneKind>();
        kinds.put(
                "cut_ban",
                kind("no-cut, no cut, moratorium, street cut ban, pavement moratorium", "", "", "ban_exception", 0, 90)
                        .banning());
        kinds.put(
                "night_only",
                kind("night, night work only", "night_work", "", "night_work", 10, 10)
                        .atNight());
        kinds.put(
                "environmental",
                kind("environment, habitat, contaminated", "", "", "environmental_review, soil_disposal", 0, 60)
                        .kind());
        kinds.put(
                "heritage",
                kind("historic, conservation", "", "", "heritage_review, archaeology_watch", 0, 60)
                        .kind());
        kinds.put(
                "rail",
                kind("railway, tram", "track_access", "", "rail_crossing", 30, 120)
                        .kind());
        kinds.put(
                "water",
                kind("waterway, watercourse, wetland", "dewatering", "", "water_crossing", 15, 90)
                        .kind());
        kinds.put(
                "school",
                kind("school zone", "school_hours", "", "school_hours", 5, 5).kind());
        kinds.put(
                "event",
                kind("event window, embargo", "event_clearance", "", "event_clearance", 10, 10)
                        .kind());
        kinds.put(
                OTHER,
                kind("", "zone_review", "zone_review", "zone_review", 20, 20).kind());
        return kinds;
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

    private static List<String> keysOf(String list) {
        return list.isEmpty() ? List.of() : List.of(list.split(", ", -1));
    }

    private static Draft kind(
            String words, String atVault, String along, String newBuild, int recoveryDays, int newBuildDays) {
        return new Draft(words, atVault, along, newBuild, recoveryDays, newBuildDays);
    }

    /** A shipped kind as the table above has it. */
    private record Draft(
            String words, String atVault, String along, String newBuild, int recoveryDays, int newBuildDays) {
        ZoneKind kind() {
            return make(Set.of());
        }

        ZoneKind banning() {
            return make(Set.of(ZoneRule.CUT_BAN));
        }

        ZoneKind atNight() {
            return make(Set.of(ZoneRule.NIGHT_ONLY));
        }

        private ZoneKind make(Set<ZoneRule> rules) {
            return new ZoneKind(
                    keysOf(words), keysOf(atVault), keysOf(along), keysOf(newBuild), rules, recoveryDays, newBuildDays);
        }
    }
}
