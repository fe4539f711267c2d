package org.spanroom.output.style;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The colors of all maps, with their legends.
 *
 * <p>Within a legend any two colors differ by 10 or more in CIEDE2000, with any of the three kinds of color blindness too, and lightness
 * (L*) changes in one direction by 8 or more a step, so that a gray print keeps the order.
 *
 * <p>Rank classes are places in the ranking, not points: how many points are many depends on the weights, and a share of all spans is
 * unknown to a filter of one row. Each class is about four times the one before, from what one crew does first to what a city could do in
 * years, so that 50 spans use two classes and 100 000 use all.
 */
public final class Palette {
    private static final int[] RANK_LIMITS = {10, 50, 200, 1000};

    private static final List<PaletteClass> RANKS = List.of(
            new PaletteClass("top_10", "Rank 1 to 10", "#610166", "#fcf3aa", 1.15),
            new PaletteClass("top_50", "Rank 11 to 50", "#a4044d", "#fcc842", 0.9),
            new PaletteClass("top_200", "Rank 51 to 200", "#d63236", "#fe8b6a", 0.7),
            new PaletteClass("top_1000", "Rank 201 to 1000", "#de790b", "#f14b71", 0.55),
            new PaletteClass("ranked", "Rank after 1000", "#c3b380", "#a7408d", 0.45),
            new PaletteClass("excluded", "Excluded", "#d4d8dc", "#47494c", 0.3));

    private static final List<PaletteClass> YEARS = List.of(
            new PaletteClass("year_1", "Year 1", "#1a3493", "#ffedb2", 1.0),
            new PaletteClass("year_2", "Year 2", "#086558", "#ffc654", 1.0),
            new PaletteClass("year_3", "Year 3", "#c54e32", "#33c5af", 1.0),
            new PaletteClass("year_4", "Year 4", "#029dc6", "#ff5773", 1.0),
            new PaletteClass("year_5", "Year 5", "#e3a12a", "#41871a", 1.0),
            new PaletteClass("later", "Year 6 or later", "#efbde1", "#484fbe", 1.0));

    private static final List<PaletteClass> SEVERITIES = List.of(
            new PaletteClass("rejected", "Rejected: not in the results", "#a40214", "#fabc3c", 0.4),
            new PaletteClass("suspect", "Suspect: missing or contradictory", "#c17d10", "#fe5f70", 0.3),
            new PaletteClass("note", "Note: nothing to fix", "#90c3d6", "#437892", 0.2));

    private static final List<PaletteClass> ZONES = List.of(
            new PaletteClass("cut_ban", "Street cut ban", "#6f0029", "#d5ff97", 0.3),
            new PaletteClass("night_only", "Night work only", "#014b90", "#f6c3fe", 0.3),
            new PaletteClass("review", "Environment or heritage", "#5f681a", "#28d09f", 0.3),
            new PaletteClass("crossing", "Rail or water", "#7f6ed0", "#d59025", 0.3),
            new PaletteClass("people", "School or event", "#f46a66", "#118fb0", 0.3),
            new PaletteClass("street_works", "Works of others", "#02c8a0", "#706e03", 0.3),
            new PaletteClass("other", "Other or unknown kind", "#eec949", "#773e70", 0.3));

    private static final List<PaletteClass> ACTIONS = List.of(
            new PaletteClass("build", "New duct", "#7c1975", "#d7eaa8", 1.2),
            new PaletteClass("recover", "Recovered duct", "#cd4e04", "#e6a505", 1.0),
            new PaletteClass("free", "Free positions of today", "#12afd1", "#0080aa", 0.5));

    private static final List<PaletteClass> FIELD_CHECKS = List.of(
            new PaletteClass("contents", "Count the contents", "#073d91", "#ffe4c2", 0.3),
            new PaletteClass("condition", "Test the bore", "#ba1d4c", "#fcb654", 0.3),
            new PaletteClass("friction", "Try a pull", "#049185", "#0fb4a4", 0.3),
            new PaletteClass("sizes", "Measure sizes", "#d09a18", "#e14750", 0.3));

    private static final List<PaletteClass> VAULTS = List.of(
            new PaletteClass("survey", "Vault to open first", "#7c1975", "#d7eaa8", 0.3),
            new PaletteClass("vault", "Vault", "#8a929b", "#5d656e", 0.2));

    private static final List<PaletteClass> CONNECTIONS = List.of(
            new PaletteClass("not_served", "Not served", "#a40214", "#fabc3c", 0.6),
            new PaletteClass("served", "Served", "#049185", "#118fb0", 0.8));

    private static final List<PaletteClass> CORRIDORS = List.of(
            new PaletteClass("corridor", "Corridor", "#1a3493", "#ffc654", 1.4),
            new PaletteClass("island", "Single section", "#4f9a3a", "#41871a", 1.0));

    private static final List<PaletteClass> MOVES = List.of(
            new PaletteClass("admitted", "Newly ranked", "#1a3493", "#ffedb2", 0.9),
            new PaletteClass("up", "Better rank", "#086558", "#ffc654", 0.7),
            new PaletteClass("down", "Same or worse rank", "#c54e32", "#33c5af", 0.5),
            new PaletteClass("dropped", "No longer ranked", "#e3a12a", "#ff5773", 0.7));

    /** Kinds of zones that share a class of the legend, since they delay work in the same way. */
    private static final Map<String, List<String>> KINDS = Map.of(
            "review", List.of("environmental", "heritage"),
            "crossing", List.of("rail", "water"),
            "people", List.of("school", "event"));

    private Palette() {}

    /** Returns the classes of ranked spans from the best to the last, then that of excluded ones. */
    public static List<PaletteClass> rankClasses() {
        return RANKS;
    }

    /** Returns the class of a span: that of its rank, or of excluded spans where it has none. */
    public static PaletteClass rankClass(OptionalInt rank) {
        if (rank.isEmpty()) {
            return RANKS.get(RANKS.size() - 1);
        }
        int place = 0;
        while (place < RANK_LIMITS.length && rank.getAsInt() > RANK_LIMITS[place]) {
            place++;
        }
        return RANKS.get(place);
    }

    /** Returns the last ranks of all classes of ranked spans but the last, which has no end. */
    public static List<Integer> rankLimits() {
        return List.of(RANK_LIMITS[0], RANK_LIMITS[1], RANK_LIMITS[2], RANK_LIMITS[3]);
    }

    /** Returns the classes of program years: each of the first five, then all later ones. */
    public static List<PaletteClass> years() {
        return YEARS;
    }

    /** Returns the classes of findings, the gravest first; the key is the severity. */
    public static List<PaletteClass> severities() {
        return SEVERITIES;
    }

    /** Returns the classes of permit zones, the last for every kind that no other has. */
    public static List<PaletteClass> zones() {
        return ZONES;
    }

    /** Returns the kinds of zones of a class other than the last. */
    public static List<String> zoneKinds(PaletteClass zone) {
        return KINDS.getOrDefault(zone.key(), List.of(zone.key()));
    }

    /** Returns the classes of ways through a section; the key is the action. */
    public static List<PaletteClass> actions() {
        return ACTIONS;
    }

    /** Returns the classes of what a field check measures; the key is what is unknown. */
    public static List<PaletteClass> fieldChecks() {
        return FIELD_CHECKS;
    }

    /** Returns the class of vaults to open first, and that of all others. */
    public static List<PaletteClass> vaults() {
        return VAULTS;
    }

    /** Returns the classes of connections by whether they are served. */
    public static List<PaletteClass> connections() {
        return CONNECTIONS;
    }

    /** Returns the classes of corridors. */
    public static List<PaletteClass> corridors() {
        return CORRIDORS;
    }

    /** Returns the classes of how spans moved between two runs. */
    public static List<PaletteClass> moves() {
        return MOVES;
    }

    /** Returns every legend by its name, for what shows or checks them all. */
    public static SortedMap<String, List<PaletteClass>> legends() {
        var legends = new TreeMap<>(Map.of(
                "rank", RANKS,
                "year", YEARS,
                "severity", SEVERITIES,
                "zone", ZONES,
                "action", ACTIONS,
                "field_check", FIELD_CHECKS,
                "vault", VAULTS,
                "connection", CONNECTIONS,
                "corridor", CORRIDORS));
        legends.put("move", MOVES);
        return legends;
    }
}
