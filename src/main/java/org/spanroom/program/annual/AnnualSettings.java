package org.spanroom.program.annual;

/**
 * How much work to put into a program of years. The same settings give the same program for the same problem.
 *
 * @param seed of the random choices
 * @param priceSteps most steps on the prices of the years
 * @param iterations of each start of the search
 * @param starts how many searches run on their own; the best is taken
 * @param programTime work of the integer program, where the library is there, in its own deterministic unit, about a second; 0 for none
 */
public record AnnualSettings(long seed, int priceSteps, int iterations, int starts, double programTime) {
    private static final int MOST_PRICE_STEPS = 4_000;
    private static final int LEAST_ITERATIONS = 20_000;
    private static final int ITERATIONS_OF_TASK = 100;
    private static final int MOST_ITERATIONS = 500_000;

    /** Up to so many tasks the integer program mostly closes the gap; up to the second number it may lower the bound a little. */
    private static final int SMALL = 200;

    private static final int MEDIUM = 1_000;
    private static final int PRICE_STEPS_OF_CONNECTIONS = 36;
    private static final int LEAST_ITERATIONS_OF_CONNECTIONS = 4_000;
    private static final int ITERATIONS_OF_CONNECTION = 80;
    private static final double PROGRAM_TIME_OF_SMALL = 15;
    private static final double PROGRAM_TIME_OF_MEDIUM = 0.5;

    public AnnualSettings {
        if (priceSteps < 0 || iterations < 0 || starts < 1 || !(programTime >= 0)) {
            throw new IllegalArgumentException(priceSteps + " steps, " + iterations + " iterations, " + starts
                    + " starts, program " + programTime);
        }
    }

    /** Returns the defaults for so many tasks. */
    public static AnnualSettings forTasks(int tasks) {
        long iterations = Math.min(MOST_ITERATIONS, LEAST_ITERATIONS + (long) ITERATIONS_OF_TASK * tasks);
        double programTime = tasks <= SMALL ? PROGRAM_TIME_OF_SMALL : tasks <= MEDIUM ? PROGRAM_TIME_OF_MEDIUM : 0;
        return new AnnualSettings(1, MOST_PRICE_STEPS, (int) iterations, 2, programTime);
    }

    /** Returns the defaults for a problem: with connections there are fewer steps and iterations, each of which looks at all of their network. */
    public static AnnualSettings of(YearProblem problem) {
        if (problem.connections().isEmpty()) {
            return forTasks(problem.tasks().size());
        }
        int iterations = ITERATIONS_OF_CONNECTION * problem.connections().get().wishes().size();
        int most = Math.max(LEAST_ITERATIONS_OF_CONNECTIONS, iterations);
        double programTime = forTasks(problem.tasks().size()).programTime;
        return new AnnualSettings(1, PRICE_STEPS_OF_CONNECTIONS, most, 2, programTime);
    }

    /** Returns these with another seed. */
    public AnnualSettings withSeed(long other) {
        return new AnnualSettings(other, priceSteps, iterations, starts, programTime);
    }

    /** Returns these with other iterations. */
    public AnnualSettings withIterations(int other) {
        return new AnnualSettings(seed, priceSteps, other, starts, programTime);
    }

    /** Returns these with other work of the integer program. */
    public AnnualSettings withProgramTime(double other) {
        return new AnnualSettings(seed, priceSteps, iterations, starts, other);
    }
}
