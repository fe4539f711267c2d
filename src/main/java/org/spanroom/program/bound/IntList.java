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

    /** Returns an ascending list with a number added in its place, or this one if it is there already. */
    IntList with(int value) {
        int at = Arrays.binarySearch(values, 0, size, value);
        if (at >= 0) {
            return this;
        }
        var longer = new IntList();
        for (int i = 0; i < -at - 1; i++) {
            longer.add(values[i]);
        }
        longer.add(value);
        for (int i = -at - 1; i < size; i++) {
            longer.add(values[i]);
        }
        return longer;
    }
}
