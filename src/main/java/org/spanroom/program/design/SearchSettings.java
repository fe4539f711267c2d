package org.spanroom.program.design;

/**
 * How long to search. The same settings give the same design for the same problem.
 *
 * @param seed of the random choices
 * @param iterations of each start: rebuilds of 1 to 10 related demands, at times of more
 * @param starts how many searches run on their own; the best is taken
 */
public record SearchSettings(long seed, int iterations, int starts) {
    /** For up to 100 demands; finds nearly always the best in small networks. */
    public static final SearchSettings DEFAULT = new SearchSettings(1, 20_000, 2);

    private static final int ITERATIONS_OF_DEMAND = 200;

    public SearchSettings {
        if (iterations < 0 || starts < 1) {
            throw new IllegalArgumentException(iterations + " iterations, " + starts + " starts");
        }
    }

    /** Returns the defaults for so many demands: the more there are, the more rebuilds it takes until all have had their turns. */
    public static SearchSettings forDemands(int demands) {
        long iterations = Math.max(DEFAULT.iterations, (long) ITERATIONS_OF_DEMAND * demands);
        return DEFAULT.withIterations((int) Math.min(Integer.MAX_VALUE, iterations));
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
