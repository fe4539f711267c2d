package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.spanroom.model.network.SpanName;

/**
 * Which span of a second run is which of a first: that of the same duct between the same two vaults. The order of the files may turn the line
 * of a span around, so that its two vaults change places; it is still the same span. Where a duct runs between two vaults more than once, names
 * that changed do not say which of its spans is which; their lengths do.
 */
final class SpanMatches {
    /** All pairs are looked at; a duct with more spans between two vaults is a mistake in its name. */
    private static final int MOST_PARALLEL = 50;

    private static final Comparator<Pair> ORDER =
            Comparator.comparingDouble(Pair::apartMm).thenComparingInt(Pair::strangeness);

    private final Map<String, String> firstIds;

    private SpanMatches(Map<String, String> firstIds) {
        this.firstIds = firstIds;
    }

    /**
     * A span of one run.
     *
     * @param lengthM NaN where the run does not say it
     */
    record Named(String id, double lengthM) {}

    /** Which spans of a network may be one another: a duct, and two vaults in any order. */
    private record Place(String duct, String vault, String otherVault) {
        static Optional<Place> of(String id) {
            return SpanName.parse(id)
                    .map(name -> name.vaultA().compareTo(name.vaultB()) <= 0
                            ? new Place(name.ductId(), name.vaultA(), name.vaultB())
                            : new Place(name.ductId(), name.vaultB(), name.vaultA()));
        }
    }

    /** Matches the spans of two runs. */
    static SpanMatches of(List<Named> first, List<Named> second) {
        Set<String> firstNames = first.stream().map(Named::id).collect(Collectors.toSet());
        Set<Place> changed = new HashSet<>();
        for (Named span : second) {
            if (!firstNames.contains(span.id())) {
                Place.of(span.id()).ifPresent(changed::add);
            }
        }
        Map<String, String> firstIds = new HashMap<>();
        if (!changed.isEmpty()) {
            Map<Place, List<Named>> before = at(changed, first);
            at(changed, second).forEach((place, now) -> match(before.getOrDefault(place, List.of()), now, firstIds));
        }
        return new SpanMatches(firstIds);
    }

    private static Map<Place, List<Named>> at(Set<Place> places, List<Named> spans) {
        Map<Place, List<Named>> at = new LinkedHashMap<>();
        for (Named span : spans) {
            Place.of(span.id())
                    .filter(places::contains)
                    .ifPresent(place ->
                            at.computeIfAbsent(place, key -> new ArrayList<>()).add(span));
        }
        return at;
    }

    private static void match(List<Named> before, List<Named> now, Map<String, String> firstIds) {
        if (before.size() == now.size() && now.size() <= MOST_PARALLEL) {
            matchAll(before, now, firstIds);
            return;
        }
        Set<String> names = before.stream().map(Named::id).collect(Collectors.toSet());
        now.forEach(span -> names.remove(span.id()));
        Set<String> known = before.stream().map(Named::id).collect(Collectors.toSet());
        for (Named span : now) {
            String turned = turned(span.id());
            if (!known.contains(span.id()) && names.contains(turned)) {
                firstIds.put(span.id(), turned);
            }
        }
    }

    /** As many spans as before: each is the free one of the nearest length, of equal ones that of its own name, then of its name turned around. */
    private static void matchAll(List<Named> before, List<Named> now, Map<String, String> firstIds) {
        List<Named> free = new ArrayList<>(before);
        List<Named> open = new ArrayList<>(now);
        while (!open.isEmpty()) {
            Named bestNow = open.get(0);
            Named bestBefore = free.get(0);
            for (Named span : open) {
                for (Named candidate : free) {
                    if (ORDER.compare(new Pair(candidate, span), new Pair(bestBefore, bestNow)) < 0) {
                        bestNow = span;
                        bestBefore = candidate;
                    }
                }
            }
            firstIds.put(bestNow.id(), bestBefore.id());
            open.remove(bestNow);
            free.remove(bestBefore);
        }
    }

    private record Pair(Named before, Named now) {
        /** Millimeters, so that what was rounded is equal. */
        double apartMm() {
            double apartMm = Math.rint(1000 * Math.abs(before.lengthM - now.lengthM));
            return Double.isNaN(apartMm) ? Double.MAX_VALUE : apartMm;
        }

        int strangeness() {
            if (before.id.equals(now.id)) {
                return 0;
            }
            return before.id.equals(turned(now.id)) ? 1 : 2;
        }
    }

    /** Returns what the first run calls a span of the second, or would call it. */
    String firstId(String secondId) {
        return firstIds.getOrDefault(secondId, secondId);
    }

    private static String turned(String id) {
        return SpanName.parse(id)
                .map(name -> new SpanName(name.ductId(), name.vaultB(), name.vaultA(), name.number()).toString())
                .orElse(id);
    }
}
