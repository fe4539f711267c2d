package org.spanroom.program.design;

/**
 * How long to search. The same settings give the same design for the same problem.
 *
 * @param seed of the random choices
 * @param iterations of each start: rebuilds of 1 to 10 related demands, at times of more
 * @param starts how many searches run on their own; the best is taken
 */
public record SearchSettings(long seed, int iterations, int starts) {
    /** Finds nearly always the best in small networks. */
    public static final SearchSettings DEFAULT = new SearchSettings(1, 20_000, 2);

    public SearchSettings {
        if (iterations < 0 || starts < 1) {
            throw new IllegalArgumentException(iterations + " iterations, " + starts + " starts");
        }
    }

    /** Returns these with another seed. */
    public SearchSettings withSeed(long other) {
        return new SearchSettings(other, iterations, starts);
    }

    /** Returns these with other iterations. */
    public SearchSettings withIterations(int other) {
        return new SearchSettings(seed, other, starts);
    }
}
