package org.spanroom.model.permit;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.spanroom.model.UnitSystem;

/**
 * What a kind of permit zone may impose in addition to permits. The lower-case name is the key of its flag in the config and its
 * column among the permits.
 */
@SuppressWarnings("ImmutableEnumChecker") // Shown is a record of texts.
public enum ZoneRule {
    CUT_BAN(
            Reach.ALONG,
            new Shown(
                    "cut_banned",
                    "cut_ban",
                    "Whether no new trench may be cut in the zone.",
                    "Meters on which no new trench may be cut on the run date.",
                    "banned",
                    "new trench")),
    NIGHT_ONLY(
            Reach.AT_VAULTS,
            new Shown(
                    "night_only",
                    "night_only",
                    "Whether work in the zone is allowed only at night.",
                    "Whether recovery is allowed only at night because a vault of the span is in such a zone.",
                    "night",
                    "night work only"));

    /** Where a rule meets a span. */
    public enum Reach {
        /** Meter by meter along the span. */
        ALONG,
        /** At a vault, where crews work: the rule applies to the whole span if one of them is in such a zone. */
        AT_VAULTS
    }

    /**
     * How a rule is shown.
     *
     * @param column name of the span's column; of its columns, before {@code _m} and {@code _until}, where the rule reaches along
     * @param shortColumn the same for Shapefiles
     * @param zoneMeaning what the flag of a zone means
     * @param spanMeaning what the span's flag, or meters, mean
     * @param label one word before the explanation of a span
     * @param words the explanation; where the rule reaches along, what is ruled, before the meters
     */
    public record Shown(
            String column, String shortColumn, String zoneMeaning, String spanMeaning, String label, String words) {}

    private final Reach reach;
    private final Shown shown;

    ZoneRule(Reach reach, Shown shown) {
        this.reach = reach;
        this.shown = shown;
    }

    /** Returns all rules in the order in which they are given of a span: first those at its vaults. */
    public static List<ZoneRule> vaultsFirst() {
        return List.of(values()).stream()
                .sorted(Comparator.comparing(ZoneRule::reach).reversed())
                .toList();
    }

    /** Returns the rules that a span with such touches is under. */
    public static Map<ZoneRule, RuledPart> of(List<ZoneTouch> touches) {
        var parts = new EnumMap<ZoneRule, RuledPart>(ZoneRule.class);
        for (ZoneRule rule : values()) {
            List<ZoneTouch> under = touches.stream().filter(rule::isMetBy).toList();
            if (!under.isEmpty()) {
                parts.put(rule, RuledPart.of(under));
            }
        }
        return parts;
    }

    private boolean isMetBy(ZoneTouch touch) {
        boolean reached = reach == Reach.ALONG ? touch.lengthM() > 0 : touch.atVault();
        return reached && touch.rule().rules().contains(this);
    }

    public Reach reach() {
        return reach;
    }

    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    public Shown shown() {
        return shown;
    }

    /** Returns what the rule means for a span, for people who read such units. */
    public String words(RuledPart part, UnitSystem units) {
        if (reach == Reach.AT_VAULTS) {
            return shown.words();
        }
        String until = part.until().map(day -> "until " + day).orElse("no end date");
        return shown.words() + " on " + units.words(part.lengthM(), 2, "m") + ", " + until;
    }
}
