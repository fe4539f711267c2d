package org.spanroom.rank;

import java.util.Arrays;
import java.util.function.IntBinaryOperator;
import java.util.stream.IntStream;

/** Sorts numbers by an order that is not their own. Equal ones stay as they are. */
final class NumberSort {
    private static final int MOST_OBJECTS = 1 << 20;

    /** So few are in order sooner by inserting one after another. */
    private static final int MOST_INSERTED = 16;

    private NumberSort() {}

    /** Sorts a part of the numbers. As objects, millions would take five times their room, so only a part is at a time. */
    static void sort(int[] order, int from, int to, IntBinaryOperator comparator) {
        if (to - from <= MOST_INSERTED) {
            insert(order, from, to, comparator);
            return;
        }
        if (to - from > MOST_OBJECTS) {
            int middle = (from + to) >>> 1;
            sort(order, from, middle, comparator);
            sort(order, middle, to, comparator);
            merge(order, from, middle, to, comparator);
            return;
        }
        Integer[] run = IntStream.range(from, to).mapToObj(i -> order[i]).toArray(Integer[]::new);
        Arrays.parallelSort(run, comparator::applyAsInt);
        for (int i = from; i < to; i++) {
            order[i] = run[i - from];
        }
    }

    private static void insert(int[] order, int from, int to, IntBinaryOperator comparator) {
        for (int i = from + 1; i < to; i++) {
            int inserted = order[i];
            int at = i;
            while (at > from && comparator.applyAsInt(order[at - 1], inserted) > 0) {
                order[at] = order[at - 1];
                at--;
            }
            order[at] = inserted;
        }
    }

    private static void merge(int[] order, int from, int middle, int to, IntBinaryOperator comparator) {
        int[] first = Arrays.copyOfRange(order, from, middle);
        int a = 0;
        int b = middle;
        for (int i = from; a < first.length; i++) {
            order[i] = b < to && comparator.applyAsInt(order[b], first[a]) < 0 ? order[b++] : first[a++];
        }
    }
}
