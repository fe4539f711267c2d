package org.spanroom.model.effort;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.Check;

/**
 * The rates that hours, money, material and new build are calculated with, each with its source.
 *
 * @param currency of all money, a word for people
 * @param surfaces the recorded words that mean each surface, of a route or of a vault's cover; case does not matter
 * @param surfaceWhenUnknown what a route's surface means if its word is unknown or not recorded; a vault's cover is then treated as in the roadway
 * @param standard one rate for each key
 * @param byVaultKind rates that are others at vaults of a kind
 * @param byZoneKind rates that are others for spans that touch a permit zone of a kind
 */
public record RateSettings(
        String currency,
        Map<Surface, List<String>> surfaces,
        Surface surfaceWhenUnknown,
        Map<RateKey, Rate> standard,
        List<RateOverride> byVaultKind,
        List<RateOverride> byZoneKind) {
    public RateSettings {
        Check.notBlank("currency", currency);
        surfaces = Collections.unmodifiableMap(copyOf(Surface.class, surfaces));
        standard = Collections.unmodifiableMap(copyOf(RateKey.class, standard));
        for (Surface surface : Surface.values()) {
            if (!surfaces.containsKey(surface)) {
                throw new IllegalArgumentException(
                        "surfaces must have the words for " + surface.name().toLowerCase(Locale.ROOT));
            }
        }
        byVaultKind = List.copyOf(byVaultKind);
        byZoneKind = List.copyOf(byZoneKind);
        for (RateKey key : RateKey.values()) {
            Rate rate = standard.get(key);
            if (rate == null) {
                throw new IllegalArgumentException("standard must have the rate " + key.key());
            }
            demandUsable(key, rate);
        }
    }

    /** Returns the rate that applies where no other one does. */
    Rate rate(RateKey key) {
        return Objects.requireNonNull(standard.get(key));
    }

    /** Returns every rate: the standard ones, then those of kinds of vaults and of zones. */
    public List<Rate> all() {
        return Stream.concat(
                        standard.values().stream(),
                        Stream.concat(byVaultKind.stream(), byZoneKind.stream()).map(RateOverride::there))
                .toList();
    }

    /** Returns whether a recorded word means a surface, so that none needs to be assumed. */
    public boolean knowsSurface(String word) {
        return findSurface(word) != null;
    }

    /** Returns the surface that a recorded word means, or the one that is taken where it means none. */
    public Surface surfaceOf(String word) {
        Surface found = findSurface(word);
        return found == null ? surfaceWhenUnknown : found;
    }

    private @Nullable Surface findSurface(String word) {
        for (Map.Entry<Surface, List<String>> entry : surfaces.entrySet()) {
            if (holds(entry.getValue(), word)) {
                return entry.getKey();
            }
        }
        return null;
    }

    static void demandUsable(RateKey key, Rate rate) {
        if (key.divides() && rate.low() == 0) {
            throw new IllegalArgumentException("low of " + key.key() + " must be > 0, since it is divided by");
        }
    }

    private static boolean holds(List<String> words, String word) {
        String wanted = word.strip();
        for (String candidate : words) {
            if (candidate.equalsIgnoreCase(wanted)) {
                return true;
            }
        }
        return false;
    }

    private static <K extends Enum<K>, V> Map<K, V> copyOf(Class<K> keys, Map<K, V> given) {
        var copy = new EnumMap<K, V>(keys);
        copy.putAll(given);
        return copy;
    }
}
