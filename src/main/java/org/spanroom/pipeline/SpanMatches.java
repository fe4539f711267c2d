package org.spanroom.pipeline;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanroom.model.network.SpanName;

/**
 * Which span of a second run is which of a first: that of the same duct between the same two vaults. The order of the files may turn the line
 * of a span around, so that its two vaults change places; it is still the same span.
 */
final class SpanMatches {
    private final Map<String, String> turned;

    private SpanMatches(Map<String, String> turned) {
        this.turned = turned;
    }

    /** Matches the names of two runs. */
    static SpanMatches of(List<String> first, List<String> second) {
        Set<String> only = new HashSet<>(first);
        second.forEach(only::remove);
        Map<String, String> turned = new HashMap<>();
        if (!only.isEmpty()) {
            Set<String> firstIds = new HashSet<>(first);
            for (String id : second) {
                Optional<String> reversed = reversed(id).filter(only::contains);
                if (!firstIds.contains(id) && reversed.isPresent()) {
                    turned.put(id, reversed.get());
                }
            }
        }
        return new SpanMatches(turned);
    }

    /** Returns what the first run calls a span of the second, or would call it. */
    String firstId(String secondId) {
        return turned.getOrDefault(secondId, secondId);
    }

    private static Optional<String> reversed(String id) {
        return SpanName.parse(id)
                .map(name -> new SpanName(name.ductId(), name.vaultB(), name.vaultA(), name.number()).toString());
    }
}
