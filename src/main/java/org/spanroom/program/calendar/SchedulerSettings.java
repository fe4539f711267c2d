package org.spanroom.program.calendar;

/**
 * How long to improve a calendar. The same settings give the same calendar for the same orders.
 *
 * @param seed of the random choices
 * @param iterations how often a few orders are taken out and placed again
 */
public record SchedulerSettings(long seed, int iterations) {
    private static final int LEAST_ITERATIONS = 2_000;
    private static final int ITERATIONS_OF_ORDER = 20;
    private static final int MOST_ITERATIONS = 40_000;

    public SchedulerSettings {
        if (iterations < 0) {
            throw new IllegalArgumentException("iterations must be >= 0, was " + iterations);
        }
    }

    /** Returns settings for so many orders: the more there are, the more iterations until all have had their turns. */
    public static SchedulerSettings forOrders(int orders) {
        long iterations = Math.max(LEAST_ITERATIONS, (long) ITERATIONS_OF_ORDER * orders);
        return new SchedulerSettings(1, (int) Math.min(MOST_ITERATIONS, iterations));
    }
}
