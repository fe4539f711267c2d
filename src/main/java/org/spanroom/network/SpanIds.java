package org.spanroom.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.spanroom.model.Span;

/**
 * Makes the names of spans unique: the first keeps its name, those that repeat it get ":2", ":3" in their order.
 *
 * <p>Only names whose 64-bit hash occurs more than once are looked at as text, which spares a table of millions.
 */
final class SpanIds {
    private final long[] hashes;
    private final Map<String, Integer> uses = new TreeMap<>();
    private final Set<String> given = new TreeSet<>();

    private SpanIds(List<Span> spans) {
        hashes = spans.stream().mapToLong(span -> hash(span.id())).toArray();
        Arrays.sort(hashes);
    }

    static List<Span> distinct(List<Span> spans) {
        var ids = new SpanIds(spans);
        List<Span> distinct = new ArrayList<>(spans.size());
        for (Span span : spans) {
            distinct.add(ids.repeats(span.id()) ? ids.renamed(span) : span);
        }
        return distinct;
    }

    private Span renamed(Span span) {
        int use = uses.merge(span.id(), 1, Integer::sum);
        if (use == 1) {
            return span;
        }
        String id = span.id() + ":" + use;
        while (occurs(id) || !given.add(id)) {
            use = uses.merge(span.id(), 1, Integer::sum);
            id = span.id() + ":" + use;
        }
        return new Span(
                id,
                span.duct(),
                span.routeIds(),
                span.from(),
                span.to(),
                span.lonLat(),
                span.ground(),
                span.lengthM(),
                span.drawnLengthM(),
                span.fromOffsetM(),
                span.toOffsetM(),
                span.positionQuality());
    }

    private boolean repeats(String id) {
        long hash = hash(id);
        int at = Arrays.binarySearch(hashes, hash);
        return (at > 0 && hashes[at - 1] == hash) || (at + 1 < hashes.length && hashes[at + 1] == hash);
    }

    private boolean occurs(String id) {
        return Arrays.binarySearch(hashes, hash(id)) >= 0;
    }

    private static long hash(String id) {
        long hash = 1_125_899_906_842_597L;
        for (int i = 0; i < id.length(); i++) {
            hash = (hash ^ id.charAt(i)) * 0x9E3779B97F4A7C15L;
            hash ^= hash >>> 32;
        }
        return hash;
    }
}
