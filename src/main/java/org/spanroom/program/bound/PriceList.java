package org.spanroom.program.bound;

import java.util.Arrays;

/** Prices of slots, highest first once sorted. Not thread-safe. Reusable. */
final class PriceList {
    /** Of Shell's sort (from memory), those above 701 each 2.25 times the one before: thousands of equal requests make long lists. */
    private static final int[] GAPS = {17961, 7983, 3548, 1577, 701, 301, 132, 57, 23, 10, 4, 1};

    private double[] prices = new double[16];
    private int[] codes = new int[16];
    private double[] sums = new double[17];
    private int count;

    void clear() {
        count = 0;
    }

    int count() {
        return count;
    }

    /** Adds a price, and a code for the demand and the direction that pays it. */
    void add(double price, int code) {
        if (count == prices.length) {
            prices = Arrays.copyOf(prices, 2 * count);
            codes = Arrays.copyOf(codes, 2 * count);
            sums = new double[2 * count + 1];
        }
        prices[count] = price;
        codes[count++] = code;
    }

    void addAll(PriceList other) {
        for (int i = 0; i < other.count; i++) {
            add(other.prices[i], other.codes[i]);
        }
    }

    void setTo(PriceList other) {
        clear();
        addAll(other);
    }

    /** Sorts by price, highest first; of one price the lower code. */
    void sort() {
        for (int gap : GAPS) {
            sort(gap);
        }
        sums[0] = 0;
        for (int i = 0; i < count; i++) {
            sums[i + 1] = sums[i] + prices[i];
        }
    }

    private void sort(int gap) {
        for (int i = gap; i < count; i++) {
            double price = prices[i];
            int code = codes[i];
            int j = i;
            while (j >= gap && (prices[j - gap] < price || (prices[j - gap] == price && codes[j - gap] > code))) {
                prices[j] = prices[j - gap];
                codes[j] = codes[j - gap];
                j -= gap;
            }
            prices[j] = price;
            codes[j] = code;
        }
    }

    double price(int i) {
        return prices[i];
    }

    int code(int i) {
        return codes[i];
    }

    /** Returns the sum of the highest prices, of all where there are fewer; of a sorted list. */
    double sum(int highest) {
        return sums[Math.min(highest, count)];
    }

    /** Returns whether each sum of highest prices is at least the other list's; both sorted. */
    boolean isAlwaysAbove(PriceList other) {
        for (int i = 1; i <= Math.max(count, other.count); i++) {
            if (sum(i) < other.sum(i)) {
                return false;
            }
        }
        return true;
    }
}
