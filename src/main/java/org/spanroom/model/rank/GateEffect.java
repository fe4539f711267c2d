package org.spanroom.model.rank;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** What a reason for exclusion closes, where a way through a duct is looked for: a gate closes recovery, not always use. */
public enum GateEffect {
    /** No cable can be placed in the duct at all, or nothing is known of its room. */
    CLOSES_USE,
    /** The positions of today can be used, but no innerduct comes out. */
    CLOSES_RECOVERY,
    /** Recovery is possible later: from a day on, or once other room is used up. */
    OPENS_LATER;

    /** The keys are those of the gates; a test holds that each gate is here. */
    private static final Map<String, GateEffect> BY_KEY = Map.ofEntries(
            Map.entry("work_done", CLOSES_RECOVERY),
            Map.entry("in_work", CLOSES_RECOVERY),
            Map.entry("contents_unknown", CLOSES_USE),
            Map.entry("no_innerduct", CLOSES_RECOVERY),
            Map.entry("no_outer_duct", CLOSES_USE),
            Map.entry("loop", CLOSES_USE),
            Map.entry("duct_collapsed", CLOSES_USE),
            Map.entry("duct_blocked", CLOSES_USE),
            Map.entry("innerduct_fixed", CLOSES_RECOVERY),
            Map.entry("splice_inside", CLOSES_RECOVERY),
            Map.entry("no_cable_hold", CLOSES_RECOVERY),
            Map.entry("service_unknown", CLOSES_RECOVERY),
            Map.entry("all_cables_dead", CLOSES_RECOVERY),
            Map.entry("owner_consent_missing", CLOSES_USE),
            Map.entry("loose_cable_forbidden", CLOSES_RECOVERY),
            Map.entry("embargo", OPENS_LATER),
            Map.entry("empty_duct_in_bank", OPENS_LATER),
            Map.entry("room_without_recovery", OPENS_LATER),
            Map.entry("pull_fails", CLOSES_RECOVERY),
            Map.entry("no_room_gained", CLOSES_RECOVERY));

    /**
     * Returns the effect of a gate.
     *
     * @param key the gate's word in columns
     * @throws IllegalArgumentException if there is no such gate
     */
    public static GateEffect of(String key) {
        GateEffect effect = BY_KEY.get(key);
        if (effect == null) {
            throw new IllegalArgumentException("no gate '" + key + "'");
        }
        return effect;
    }

    /** Returns the keys of all gates, sorted. */
    public static Set<String> gates() {
        return new TreeSet<>(BY_KEY.keySet());
    }

    /** Returns whether there is a gate of that key. */
    public static boolean isGate(String key) {
        return BY_KEY.containsKey(key);
    }
}
