package org.spanroom.rank;

import java.nio.charset.StandardCharsets;

/**
 * Numbers between 0 and 1 for the samples of one span, a sequence for each of three unknowns.
 *
 * <p>Method: the first three sequences of Sobol' (1967, from memory), scrambled as Owen (1995, from memory) does: of each number every binary digit is
 * flipped or not by a hash of the digits before it, of the unknown, of the span's name and of the seed. So each 64 samples from a multiple of
 * 64 on have one number in each of the 64 equal parts of the unit interval, in every unknown; the same is true of every power of two; and pairs of
 * unknowns fill the square evenly. The order of the samples is scrambled in the same way, or else what takes turns by the number of the
 * sample, such as the draws of rates, would always meet the same part of the interval. The numbers depend on seed, span and sample only,
 * hence not on threads or order. Not safe for use by several threads.
 */
final class Draws {
    private static final int UNKNOWNS = 3;

    /** Hashes of 64 bits, each for six binary digits: one bit for each of the 63 beginnings that these may have. */
    private static final int HASHES = 3;

    private static final int DIGITS_PER_HASH = 6;
    private static final int DIGITS = HASHES * DIGITS_PER_HASH;
    private static final long STEP = 0x9E3779B97F4A7C15L;
    private static final int[][] DIRECTIONS = {halves(), directions(0, 1), directions(1, 1, 3)};

    private final long[] keys = new long[UNKNOWNS];
    private final long orderKey;
    private int orderedSample = -1;
    private int place; // of that sample in the sequences

    Draws(int seed, String spanId) {
        long hash = mixed(STEP * (seed + 1L));
        for (byte octet : spanId.getBytes(StandardCharsets.UTF_8)) {
            hash = mixed(hash ^ (octet & 0xFF));
        }
        for (int i = 0; i < UNKNOWNS; i++) {
            hash = mixed(hash + STEP);
            keys[i] = hash;
        }
        orderKey = mixed(hash + STEP);
    }

    /** Returns the number of a sample, 0 to 262143, for an unknown, 0 to 2. */
    double at(int unknown, int sample) {
        if (sample != orderedSample) {
            place = scrambled(sample, orderKey);
            orderedSample = sample;
        }
        int digits = scrambled(point(DIRECTIONS[unknown], place), keys[unknown]);
        double rest = (mixed(keys[unknown] ^ (STEP * (sample + 1L))) >>> 11) * 0x1.0p-53;
        return (digits + rest) / (1 << DIGITS);
    }

    /** Returns the binary digits behind the point, the first one as the highest bit. */
    private static int point(int[] directions, int number) {
        int digits = 0;
        for (int bit = 0; bit < DIGITS; bit++) {
            // All ones or none: bits come at random, and a branch on them is guessed wrong half the time.
            digits ^= directions[bit] & -((number >>> bit) & 1);
        }
        return digits;
    }

    private static int scrambled(int digits, long key) {
        int scrambled = 0;
        for (int i = 0; i < HASHES; i++) {
            int below = DIGITS - i * DIGITS_PER_HASH;
            int before = (1 << (i * DIGITS_PER_HASH)) | (digits >>> below);
            long flips = mixed(key + STEP * before);
            int group = (digits >>> (below - DIGITS_PER_HASH)) & ((1 << DIGITS_PER_HASH) - 1);
            scrambled = (scrambled << DIGITS_PER_HASH) | (group ^ flipped(flips, group));
        }
        return scrambled;
    }

    /** Returns which of six digits are flipped: each by the bit that its place and the digits before it choose. */
    private static int flipped(long flips, int group) {
        return bit(flips, 1) << 5
                | bit(flips, 2 | group >>> 5) << 4
                | bit(flips, 4 | group >>> 4) << 3
                | bit(flips, 8 | group >>> 3) << 2
                | bit(flips, 16 | group >>> 2) << 1
                | bit(flips, 32 | group >>> 1);
    }

    private static int bit(long bits, int number) {
        return (int) (bits >>> number) & 1;
    }

    /** The sequence of van der Corput: 1/2, 1/4 and so on. */
    private static int[] halves() {
        int[] directions = new int[DIGITS];
        for (int i = 0; i < DIGITS; i++) {
            directions[i] = 1 << (DIGITS - 1 - i);
        }
        return directions;
    }

    /**
     * Directions by the recurrence of a primitive polynomial over two elements.
     *
     * @param middle the coefficients between the first and the last of the polynomial, as bits
     * @param first the first directions, as odd whole numbers; as many as the polynomial's degree
     */
    private static int[] directions(int middle, int... first) {
        int degree = first.length;
        int[] odd = new int[DIGITS];
        System.arraycopy(first, 0, odd, 0, degree);
        for (int i = degree; i < DIGITS; i++) {
            odd[i] = odd[i - degree] ^ (odd[i - degree] << degree);
            for (int k = 1; k < degree; k++) {
                odd[i] ^= ((middle >>> (degree - 1 - k)) & 1) == 1 ? odd[i - k] << k : 0;
            }
        }
        int[] directions = new int[DIGITS];
        for (int i = 0; i < DIGITS; i++) {
            directions[i] = odd[i] << (DIGITS - 1 - i);
        }
        return directions;
    }

    /** The finalizer of SplitMix64 (Steele, Lea and Flood 2014; from memory). */
    private static long mixed(long bits) {
        long z = bits;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
