package org.spanroom.program.annual;

import java.util.List;

/**
 * Under these the years of a problem fall apart, see {@link PricedYears}. Every choice gives a valid bound. Immutable; arrays are never changed.
 *
 * @param years prices of what the years have
 * @param worth of each connection, of each year, what counts in the years from then on for being served by their ends: it never rises with the years, and is at
 *     least what serving it first in that year is worth
 * @param shares of each task, of each of its set-ups, the share of it that the task pays; the shares of a place add up to at most 1
 */
@SuppressWarnings("ArrayRecordComponent") // Inside the package only; never changed or compared.
record WishPrices(YearPrices years, double[][] worth, double[][] shares) {
    /** Returns what a task takes, with its shares of set-ups only. */
    double[] uses(Task task, int number) {
        double[] uses = task.uses().stream().mapToDouble(Double::doubleValue).toArray();
        for (int setUp = 0; setUp < task.setUps().size(); setUp++) {
            List<Double> shared = task.setUps().get(setUp).uses();
            for (int resource = 0; resource < uses.length; resource++) {
                uses[resource] = Math.max(0, uses[resource] - (1 - shares[number][setUp]) * shared.get(resource));
            }
        }
        return uses;
    }

    /**
     * Returns shares in the ratio of weights.
     *
     * @param weights of each task how often it is done, above 0
     */
    static double[][] shares(YearProblem problem, double[] weights) {
        double[] sums = new double[problem.places()];
        List<Task> tasks = problem.tasks();
        for (int task = 0; task < weights.length; task++) {
            for (SetUp setUp : tasks.get(task).setUps()) {
                sums[setUp.place()] += weights[task];
            }
        }
        double[][] shares = new double[weights.length][];
        for (int task = 0; task < weights.length; task++) {
            double weight = weights[task];
            shares[task] = tasks.get(task).setUps().stream()
                    .mapToDouble(setUp -> weight / sums[setUp.place()])
                    .toArray();
        }
        return shares;
    }

    /**
     * Returns the least worth of a wish: the greatest of its values from each year on.
     *
     * @param isRequired whether it has to be served by its last year, so that later years count nothing
     */
    static double[] leastWorth(Wish wish, boolean isRequired) {
        int years = wish.values().size();
        double[] worth = new double[years];
        double most = 0;
        for (int year = years - 1; year >= 0; year--) {
            most = isRequired && year > wish.lastYear() ? 0 : Math.max(most, wish.values().get(year));
            worth[year] = most;
        }
        return worth;
    }
}
