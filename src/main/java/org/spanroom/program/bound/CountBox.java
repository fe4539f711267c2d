package org.spanroom.program.bound;

import java.util.Arrays;

/**
 * All vectors of counts from 0 up to a most, one count for each size of demand, numbered row by row.
 *
 * <p>The cost of a piece depends only on how many demands of each size pass it, so a table over a box holds it.
 */
final class CountBox {
    private final int[] most;
    private final int[] stride;
    private final int size;

    /** Of each vector its counts, row by row: divisions would take most of the time of a table. */
    private final int[] counts;

    CountBox(int... most) {
        this.most = most.clone();
        this.stride = new int[most.length];
        int product = 1;
        for (int k = most.length - 1; k >= 0; k--) {
            stride[k] = product;
            product = Math.multiplyExact(product, most[k] + 1);
        }
        this.size = product;
        this.counts = new int[size * most.length];
        for (int i = 0; i < size; i++) {
            for (int k = 0; k < most.length; k++) {
                counts[i * most.length + k] = i / stride[k] % (most[k] + 1);
            }
        }
    }

    int classes() {
        return most.length;
    }

    int size() {
        return size;
    }

    int most(int k) {
        return most[k];
    }

    int stride(int k) {
        return stride[k];
    }

    /** Returns the count of one size in a numbered vector. */
    int count(int index, int k) {
        return counts[index * most.length + k];
    }

    /** Returns the number of a vector in the box. */
    int index(int... counts) {
        int index = 0;
        for (int k = 0; k < most.length; k++) {
            index += counts[k] * stride[k];
        }
        return index;
    }

    /** Returns the number of one vector less another one, where a count below 0 is 0. */
    int indexOfRest(int index, int[] taken) {
        int rest = 0;
        for (int k = 0; k < most.length; k++) {
            rest += Math.max(0, count(index, k) - taken[k]) * stride[k];
        }
        return rest;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CountBox box && Arrays.equals(most, box.most);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(most);
    }
}
