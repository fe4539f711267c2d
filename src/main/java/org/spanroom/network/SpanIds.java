package org.spanroom.network;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.spanroom.model.network.SpanName;

/**
 * Makes the names of spans unique: the first keeps its name, those that repeat it get ":2", ":3" in their order.
 *
 * <p>Only names whose hash occurs more than once are looked at as text, which spares a table of millions.
 */
final class SpanIds {
    private final int[] repeated;
    private final Map<String, Integer> uses = new TreeMap<>();

    private SpanIds(int[] hashes) {
        int[] sorted = hashes.clone();
        Arrays.parallelSort(sorted);
        repeated = IntStream.range(1, sorted.length)
                .filter(i -> sorted[i] == sorted[i - 1])
                .filter(i -> i == 1 || sorted[i] != sorted[i - 2])
                .map(i -> sorted[i])
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

    /** A name with a number is no span's own name, since those have no number. */
    private String distinct(String name) {
        int use = uses.merge(name, 1, Integer::sum);
        return use == 1 ? name : SpanName.numbered(name, use);
    }
}
