package org.spanroom.network;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

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
                .filter(i -> i == 1 || this.hashes[i] != this.hashes[i - 2])
                .map(i -> this.hashes[i])
                .toArray();
    }

    /** Returns the new names of spans by their numbers; {@code hashes} are those of all names, in the order of the spans. */
    static Map<Integer, String> renamed(IntFunction<String> names, int[] hashes) {
        var ids = new SpanIds(hashes);
        Map<Integer, String> renamed = new HashMap<>();
        for (int span = 0; span < hashes.length; span++) {
            if (Arrays.binarySearch(ids.repeated, hashes[span]) >= 0) {
                String name = names.apply(span);
                String other = ids.distinct(name);
                if (!other.equals(name)) {
                    renamed.put(span, other);
                }
            }
        }
        return renamed;
    }

    private String distinct(String name) {
        int use = uses.merge(name, 1, Integer::sum);
        if (use == 1) {
            return name;
        }
        String id = name + ":" + use;
        while (occurs(id) || !given.add(id)) {
            use = uses.merge(name, 1, Integer::sum);
            id = name + ":" + use;
        }
        return id;
    }

    private boolean occurs(String id) {
        return Arrays.binarySearch(hashes, id.hashCode()) >= 0;
    }
}
