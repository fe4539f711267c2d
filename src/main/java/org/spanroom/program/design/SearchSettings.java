package org.spanroom.program.design;

/**
 * How long to search. The result depends on all but {@code threads}.
 *
 * @param seed of the random choices
 * @param iterations of each start: rebuilds of 1 to 10 connections
 * @param starts how many searches run on their own; the best is taken
 * @param threads how many of them run at a time
 */
public record SearchSettings(long seed, int iterations, int starts, int threads) {
    /** Finds nearly always the best in small networks, and takes seconds to a few minutes in large ones. */
    public static final SearchSettings DEFAULT =
            new SearchSettings(1, 20_000, 2, Runtime.getRuntime().availableProcessors());

    public SearchSettings {
        if (iterations < 0 || starts < 1 || threads < 1) {
            throw new IllegalArgumentException(
                    iterations + " iterations, " + starts + " starts, " + threads + " threads");
        }
    }

    /** Returns these with another seed. */
    public SearchSettings withSeed(long other) {
        return new SearchSettings(other, iterations, starts, threads);
    }

    /** Returns these with other iterations. */
    public SearchSettings withIterations(int other) {
        return new SearchSettings(seed, other, starts, threads);
    }

    /** Returns these with so many threads. */
    public SearchSettings withThreads(int other) {
        return new SearchSettings(seed, iterations, starts, other);
    }
}
