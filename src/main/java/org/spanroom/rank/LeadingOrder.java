package org.spanroom.rank;

import java.util.Arrays;
import java.util.function.IntToLongFunction;
import java.util.stream.IntStream;

/**
 * Puts many numbers in order by the leading bits of a key, which leave room for the number in one long: millions are sorted as plain longs. The
 * caller puts those in order that the bits do not distinguish.
 */
final class LeadingOrder {
    private LeadingOrder() {}

    /** Puts numbers in order whose leading bits are the same: those at the places from {@code from} to before {@code to}, two at least. */
    @FunctionalInterface
    interface Ties {
        void sort(int[] numbers, int from, int to);
    }

    /**
     * Returns the numbers from 0 to before {@code size} in order.
     *
     * @param leading finds the key of a number, 0 or more: no key may be larger than that of a number which belongs after it; may be asked by several threads
     * @param ties may be asked by several threads, for other parts
     */
    static int[] of(int size, IntToLongFunction leading, Ties ties) {
        int[] order = IntStream.range(0, size).toArray();
        sort(order, 0, size, size - 1, leading, ties);
        return order;
    }

    /**
     * Sorts a part of some numbers, as {@link #of} does.
     *
     * @param largest no number is larger; of keys, only the bits above those of this one count
     */
    static void sort(int[] numbers, int from, int to, int largest, IntToLongFunction leading, Ties ties) {
        int bits = Integer.SIZE - Integer.numberOfLeadingZeros(Math.max(1, largest));
        long[] keys = new long[to - from];
        Arrays.parallelSetAll(keys, i -> leading.applyAsLong(numbers[from + i]) >>> bits << bits | numbers[from + i]);
        Arrays.parallelSort(keys);
        long ofNumber = (1L << bits) - 1;
        for (int i = 0; i < keys.length; i++) {
            numbers[from + i] = (int) (keys[i] & ofNumber);
        }
        int[] begins = equalRuns(keys, bits);
        IntStream.range(0, begins.length / 2)
                .parallel()
                .forEach(run -> ties.sort(numbers, from + begins[2 * run], from + begins[2 * run + 1]));
    }

    /** Returns where runs of several numbers with the same leading bits begin and end, one after another. */
    private static int[] equalRuns(long[] keys, int bits) {
        IntStream.Builder runs = IntStream.builder();
        for (int from = 0; from < keys.length; ) {
            int to = from + 1;
            while (to < keys.length && keys[to] >>> bits == keys[from] >>> bits) {
                to++;
            }
            if (to - from > 1) {
                runs.add(from).add(to);
            }
            from = to;
        }
        return runs.build().toArray();
    }
}
