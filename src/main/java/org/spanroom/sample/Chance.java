package org.spanroom.sample;

import java.util.Collections;
import java.util.List;

/**
 * A repeatable source of chance: the same seed gives the same numbers on every machine and every Java.
 *
 * <p>Method: SplitMix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014; constants from
 * memory). Of our own because the library's generators may change their derived draws between releases, and the committed
 * demo city must not change with them.
 */
final class Chance {
    private static final long STEP = 0x9E3779B97F4A7C15L;

    private long state;

    Chance(long seed) {
        this.state = seed;
    }

    /** Returns a source that depends on the seed and the keys only, whatever has been drawn elsewhere. */
    static Chance of(long seed, long... keys) {
        long mixed = mix(seed + STEP);
        for (long key : keys) {
            mixed = mix(mixed ^ mix(key + STEP));
        }
        return new Chance(mixed);
    }

    private static long mix(long bits) {
        long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    long next() {
        state += STEP;
        return mix(state);
    }

    /** Returns a number from 0 up to but not including 1. */
    double share() {
        return (next() >>> 11) * 0x1.0p-53;
    }

    double between(double least, double most) {
        return least + (most - least) * share();
    }

    /** Returns a whole number from 0 up to but not including the bound. */
    int below(int bound) {
        return (int) ((next() >>> 33) % bound);
    }

    /** Returns a whole number from least to most, both included. */
    int from(int least, int most) {
        return least + below(most - least + 1);
    }

    boolean happens(double probability) {
        return share() < probability;
    }

    int sign() {
        return next() < 0 ? -1 : 1;
    }

    /** Returns a number of mean 0 and the given standard deviation, never more than three of them away. */
    double wobble(double deviation) {
        return (share() + share() + share() - 1.5) * 2 * deviation;
    }

    <T> T pick(List<T> choices) {
        return choices.get(below(choices.size()));
    }

    /** Returns an index, drawn in proportion to the weights. */
    int pickWeighted(int... weights) {
        int total = 0;
        for (int weight : weights) {
            total += weight;
        }
        int left = below(total);
        int index = 0;
        while (left >= weights[index]) {
            left -= weights[index++];
        }
        return index;
    }

    void shuffle(List<?> list) {
        for (int i = list.size() - 1; i > 0; i--) {
            Collections.swap(list, i, below(i + 1));
        }
    }
}
