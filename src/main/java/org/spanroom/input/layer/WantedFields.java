package org.spanroom.input.layer;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The fields that a reading was asked for, each held once, although two terms may ask for the same one. */
public final class WantedFields {
    private final Map<String, Integer> slots = new LinkedHashMap<>();
    private final int[] slotOfWanted;
    private final @Nullable Object[] values;

    public WantedFields(List<String> wanted) {
        slotOfWanted = new int[wanted.size()];
        for (int i = 0; i < slotOfWanted.length; i++) {
            slotOfWanted[i] = slots.computeIfAbsent(wanted.get(i), name -> slots.size());
        }
        values = new Object[slots.size()];
    }

    /** Returns each wanted name once; its place in the list is its slot. */
    public List<String> names() {
        return List.copyOf(slots.keySet());
    }

    /** Returns the slot of a field, or -1 if it is not wanted. */
    public int slot(String name) {
        return slots.getOrDefault(name, -1);
    }

    public void clear() {
        Arrays.fill(values, null);
    }

    public @Nullable Object get(int slot) {
        return values[slot];
    }

    public void set(int slot, @Nullable Object value) {
        values[slot] = value;
    }

    /** Returns the values of the feature at hand, one for each field requested. */
    List<@Nullable Object> values() {
        @Nullable Object[] copy = new Object[slotOfWanted.length];
        for (int i = 0; i < copy.length; i++) {
            copy[i] = values[slotOfWanted[i]];
        }
        return Collections.unmodifiableList(Arrays.asList(copy));
    }
}
