package org.spanroom.program.bound;

import java.util.Arrays;

/** Numbers in the order in which they were added. */
final class IntList {
    private int[] values = new int[8];
    private int size;

    void clear() {
        size = 0;
    }

    void add(int value) {
        if (size == values.length) {
            values = Arrays.copyOf(values, 2 * size);
        }
        values[size++] = value;
    }

    int size() {
        return size;
    }

    int get(int i) {
        return values[i];
    }

    int[] toArray() {
        return Arrays.copyOf(values, size);
    }
}
