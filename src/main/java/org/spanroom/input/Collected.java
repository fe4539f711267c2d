package org.spanroom.input;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * What has been made of the files of one layer: routes, vaults or zones, numbered over all files, and the ids that are taken. Files
 * are read one after another; what a reading leaves that is made again is dropped.
 */
final class Collected<T> {
    private final Function<T, String> id;
    private final List<T> items = new ArrayList<>();
    private final Set<String> ids = new HashSet<>();
    private final Map<String, Integer> lastNumbers = new HashMap<>();
    private int kept;

    Collected(Function<T, String> id) {
        this.id = id;
    }

    /** Begins a file; what an earlier reading of the same file has made is dropped. */
    void begin() {
        if (items.size() > kept) {
            items.subList(kept, items.size()).clear();
            ids.clear();
            lastNumbers.clear();
            items.forEach(item -> ids.add(id.apply(item)));
        }
    }

    /** Ends a file: what was made of it stays. */
    void keep() {
        kept = items.size();
    }

    /** Returns how many things the files before the one at hand have given. */
    int before() {
        return kept;
    }

    int size() {
        return items.size();
    }

    void add(T item) {
        items.add(item);
    }

    /** Returns false if the id is taken already. */
    boolean takeId(String wanted) {
        return ids.add(wanted);
    }

    /** Returns an id that is not taken: the wanted one, or with the next free number behind it. */
    String takeIdLike(String wanted) {
        if (ids.add(wanted)) {
            return wanted;
        }
        int number = lastNumbers.getOrDefault(wanted, 1) + 1;
        while (!ids.add(wanted + "-" + number)) {
            number++;
        }
        lastNumbers.put(wanted, number);
        return wanted + "-" + number;
    }

    List<T> items() {
        return items;
    }
}
