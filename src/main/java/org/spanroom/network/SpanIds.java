package org.spanroom.network;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.spanroom.model.Span;

/**
 * Makes the names of spans unique: the first keeps its name, those that repeat it get ":2", ":3" in their order.
 *
 * <p>Only names whose hash occurs more than once are looked at as text, which spares a table of millions.
 */
final class SpanIds {
    private final int[] hashes;
    private final int[] repeated;
    private final Map<String, Integer> uses = new TreeMap<>();
    private final Set<String> given = new TreeSet<>();

    private SpanIds(int[] hashes) {
        this.hashes = hashes.clone();
        Arrays.sort(this.hashes);
        repeated = IntStream.range(1, hashes.length)
                .filter(i -> this.hashes[i] == this.hashes[i - 1])
                .map(i -> this.hashes[i])
                .distinct()
                .toArray();
    }

    /** Gives each span of the list a name of its own; {@code hashes} are those of the names, in the same order. */
    static void makeDistinct(List<Span> spans, int[] hashes) {
        var ids = new SpanIds(hashes);
        for (int i = 0; i < hashes.length; i++) {
            if (Arrays.binarySearch(ids.repeated, hashes[i]) >= 0) {
                spans.set(i, ids.renamed(spans.get(i)));
            }
        }
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

    private boolean occurs(String id) {
        return Arrays.binarySearch(hashes, id.hashCode()) >= 0;
    }
}
