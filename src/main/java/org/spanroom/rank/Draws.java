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
 * hence not on threads or order. For one thread.
 */
final class Draws {
    /** Parts of the unit interval that are known before the whole number is. */
    static final int PARTS = 64;

    private static final int UNKNOWNS = 3;

    /** Hashes of 64 bits, each for six binary digits: one bit for each of the 63 beginnings that these may have. */
    private static final int HASHES = 3;

    private static final int DIGITS_PER_HASH = 6;
    private static final int DIGITS = HASHES * DIGITS_PER_HASH;
    private static final int SIX = (1 << DIGITS_PER_HASH) - 1;
    private static final double UNIT = 1.0 / (1 << DIGITS);
    private static final long STEP = 0x9E3779B97F4A7C15L;

    /** The digits of a point by unknown and by six digits of its number, the last six first: a point is the exclusive or of three. */
    private static final int[][][] POINTS = {points(halves()), points(directions(0, 1)), points(directions(1, 1, 3))};

    /** By unknown, the last six digits of the one number whose point begins with these six, where all digits before them are 0. */
    private static final int[][] LAST_SIX = {lastSix(POINTS[0]), lastSix(POINTS[1]), lastSix(POINTS[2])};

    private final Scrambling[] unknowns = new Scrambling[UNKNOWNS];
    private final long[] keys = new long[UNKNOWNS];
    private final Order order;

    Draws(int seed, String spanId) {
        long hash = mixed(STEP * (seed + 1L));
        for (byte octet : spanId.getBytes(StandardCharsets.UTF_8)) {
            hash = mixed(hash ^ (octet & 0xFF));
        }
        for (int i = 0; i < UNKNOWNS; i++) {
            hash = mixed(hash + STEP);
            keys[i] = hash;
            unknowns[i] = new Scrambling(hash);
        }
        order = new Order(mixed(hash + STEP));
    }

    /** Returns the number of a sample, 0 to 262143, for the unknown at a place, 0 to 2. */
    double at(int place, int sample) {
        return at(place, sample, turn(sample));
    }

    /** Returns whose turn it is in the order of a sample: the same for all unknowns. */
    int turn(int sample) {
        return order.of(sample);
    }

    /** Returns in which of {@value #PARTS} equal parts of the unit interval the number of a turn lies, from 0; in a fraction of the time. */
    int part(int place, int turn) {
        return unknowns[place].first(point(POINTS[place], turn));
    }

    /**
     * Returns the one of {@value #PARTS} samples that follow one another whose number lies in a part of the unit interval: what {@link #turn}
     * and {@link #part} lead to, the other way round.
     *
     * @param block the samples from {@value #PARTS} times this number on
     */
    int sampleInPart(int place, int block, int part) {
        order.goTo(block);
        int shared = point(POINTS[place], order.firstDigits) >>> (2 * DIGITS_PER_HASH);
        int last = LAST_SIX[place][unknowns[place].digitsOfFirst(part) ^ shared];
        return block << DIGITS_PER_HASH | unflipped(last, order.lastFlips);
    }

    /** Returns the number of a sample whose turn is known. */
    double at(int place, int sample, int turn) {
        int digits = unknowns[place].of(point(POINTS[place], turn));
        double rest = (mixed(keys[place] ^ (STEP * (sample + 1L))) >>> 11) * 0x1.0p-53;
        return (digits + rest) * UNIT;
    }

    /** Returns the binary digits behind the point, the first one as the highest bit. */
    private static int point(int[][] points, int number) {
        return points[0][number & SIX]
                ^ points[1][(number >>> DIGITS_PER_HASH) & SIX]
                ^ points[2][(number >>> (2 * DIGITS_PER_HASH)) & SIX];
    }

    private static int[] lastSix(int[][] points) {
        int[] lastSix = new int[SIX + 1];
        for (int number = 0; number <= SIX; number++) {
            lastSix[points[0][number] >>> (2 * DIGITS_PER_HASH)] = number;
        }
        return lastSix;
    }

    private static int[][] points(int[] directions) {
        int[][] points = new int[HASHES][SIX + 1];
        for (int hash = 0; hash < HASHES; hash++) {
            for (int number = 0; number <= SIX; number++) {
                for (int bit = 0; bit < DIGITS_PER_HASH; bit++) {
                    points[hash][number] ^= ((number >>> bit) & 1) == 1 ? directions[hash * DIGITS_PER_HASH + bit] : 0;
                }
            }
        }
        return points;
    }

    /** Flips the digits of points; keeps the latest hashes. */
    private static final class Scrambling {
        private final long key;
        private final long firstFlips;
        private final byte[] firstSix = new byte[SIX + 1];
        private int secondBefore;
        private long secondFlips;
        private int thirdBefore;
        private long thirdFlips;

        Scrambling(long key) {
            this.key = key;
            firstFlips = mixed(key + STEP);
            flipAll(firstFlips, firstSix);
        }

        /** Returns the six digits that flipped are these. */
        int digitsOfFirst(int flippedSix) {
            return unflipped(flippedSix, firstFlips);
        }

        /** Returns the first six of the digits, flipped. */
        int first(int digits) {
            return firstSix[(digits >>> (2 * DIGITS_PER_HASH)) & SIX];
        }

        int of(int digits) {
            int second = (1 << DIGITS_PER_HASH) | (digits >>> (2 * DIGITS_PER_HASH));
            if (second != secondBefore) {
                secondBefore = second;
                secondFlips = mixed(key + STEP * second);
            }
            int third = (1 << (2 * DIGITS_PER_HASH)) | (digits >>> DIGITS_PER_HASH);
            if (third != thirdBefore) {
                thirdBefore = third;
                thirdFlips = mixed(key + STEP * third);
            }
            return first(digits) << (2 * DIGITS_PER_HASH)
                    | flipped((digits >>> DIGITS_PER_HASH) & SIX, secondFlips) << DIGITS_PER_HASH
                    | flipped(digits & SIX, thirdFlips);
        }
    }

    /** Flips the digits of the numbers of samples, which come one after another: those of {@value #PARTS} samples share all but the last six. */
    private static final class Order {
        private final long key;
        private final byte[] lastSix = new byte[SIX + 1];
        private int before = -1;
        private int firstDigits;
        private long lastFlips;

        Order(long key) {
            this.key = key;
        }

        int of(int sample) {
            goTo(sample >>> DIGITS_PER_HASH);
            return firstDigits | lastSix[sample & SIX];
        }

        void goTo(int block) {
            if (block != before) {
                before = block;
                begin(block >>> DIGITS_PER_HASH, block);
            }
        }

        /** Goes to the samples that begin with these six digits, and with these twelve. */
        private void begin(int six, int twelve) {
            long secondFlips = mixed(key + STEP * (1 << DIGITS_PER_HASH | six));
            firstDigits = flipped(six, mixed(key + STEP)) << (2 * DIGITS_PER_HASH)
                    | flipped(twelve & SIX, secondFlips) << DIGITS_PER_HASH;
            lastFlips = mixed(key + STEP * (1 << (2 * DIGITS_PER_HASH) | twelve));
            flipAll(lastFlips, lastSix);
        }
    }

    /**
     * Sets all numbers of six digits as {@link #flipped} turns them: digit by digit, since numbers that begin with the same digits share
     * the flips of these.
     */
    static void flipAll(long flips, byte[] flippedBySix) {
        flippedBySix[0] = 0;
        for (int count = 1; count <= SIX; count <<= 1) {
            for (int beginning = count - 1; beginning >= 0; beginning--) {
                int flip = (int) (flips >>> (count | beginning)) & 1;
                int longer = flippedBySix[beginning] << 1;
                flippedBySix[2 * beginning] = (byte) (longer | flip);
                flippedBySix[2 * beginning + 1] = (byte) (longer | (flip ^ 1));
            }
        }
    }

    /** Returns six digits, each flipped or not by the bit that belongs to the digits before it, behind a leading 1. */
    static int flipped(int six, long flips) {
        long flipped = (flips >>> 1 & 1) << 5
                | (flips >>> (2 | six >>> 5) & 1) << 4
                | (flips >>> (4 | six >>> 4) & 1) << 3
                | (flips >>> (8 | six >>> 3) & 1) << 2
                | (flips >>> (16 | six >>> 2) & 1) << 1
                | (flips >>> (32 | six >>> 1) & 1);
        return six ^ (int) flipped;
    }

    /** Returns the six digits that {@link #flipped} makes these of. */
    static int unflipped(int flippedSix, long flips) {
        int beginning = 1;
        for (int bit = DIGITS_PER_HASH - 1; bit >= 0; bit--) {
            beginning = beginning << 1 | ((flippedSix >>> bit ^ (int) (flips >>> beginning)) & 1);
        }
        return beginning & SIX;
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
