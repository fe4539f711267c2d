package org.spanroom.program.annual;

import java.util.Arrays;

/**
 * An upper bound by prices: each year sells what it has of each resource, and each task chooses the year that is worth most to it, or none.
 *
 * <p>Each level of set-up of a year is paid by the tasks that reach it, in shares that sum to 1; a task pays its share whether others work there
 * or not, which is at most what the level costs if any do. So for any prices and shares, the limits at their prices plus the best profit of every
 * task are at least the value of any plan. {@link PriceSearch} finds good ones.
 */
final class PriceBound {
    private final YearProblem problem;
    private final SetUpLevels levels;
    private final YearOptions options;
    private final int years;
    private final int resources;
    private final double[][] levelPrices;
    private final int[] chosen;
    private double[][] prices;
    private double[] shares;
    private double[][] bestPrices;
    private double[] bestShares;
    private double bestValue = Double.POSITIVE_INFINITY;

    PriceBound(YearProblem problem, SetUpLevels levels, YearOptions options) {
        this.problem = problem;
        this.levels = levels;
        this.options = options;
        years = problem.years();
        resources = problem.resources();
        prices = new double[years][resources];
        levelPrices = new double[levels.count()][years];
        shares = new double[levels.slots * years];
        chosen = new int[problem.tasks().size()];
        int slot = 0;
        for (int[] tasks : levels.tasks) {
            Arrays.fill(shares, slot * years, (slot + tasks.length) * years, 1.0 / tasks.length);
            slot += tasks.length;
        }
        bestPrices = copy(prices);
        bestShares = shares.clone();
    }

    double bestValue() {
        return bestValue;
    }

    /** Returns the prices of the lowest bound, of each year, of each resource. */
    double[][] bestPrices() {
        return bestPrices;
    }

    /**
     * Calculates the bound at other prices and shares, and keeps them if it is the lowest.
     *
     * @param newPrices of each year, of each resource; not negative, and 0 where there is no limit
     * @param weights of each slot of {@link SetUpLevels}, of each year: shares are in their proportion; not negative
     * @return the bound, with what rounding can amount to
     */
    double evaluate(double[][] newPrices, double[] weights) {
        prices = copy(newPrices);
        int first = 0;
        for (int[] tasks : levels.tasks) {
            for (int year = 0; year < years; year++) {
                double sum = 0;
                for (int i = 0; i < tasks.length; i++) {
                    sum += weights[(first + i) * years + year];
                }
                for (int i = 0; i < tasks.length; i++) {
                    int at = (first + i) * years + year;
                    shares[at] = sum > 0 ? weights[at] / sum : 1.0 / tasks.length;
                }
            }
            first += tasks.length;
        }
        return evaluate();
    }

    private double evaluate() {
        double sum = 0;
        double amount = 0;
        for (int year = 0; year < years; year++) {
            for (int resource = 0; resource < resources; resource++) {
                double limit = problem.limits().get(year).get(resource);
                if (prices[year][resource] > 0) {
                    sum += prices[year][resource] * limit * (1 + YearAccount.ROUNDING);
                }
            }
        }
        amount += sum;
        priceLevels();
        for (int task = 0; task < chosen.length; task++) {
            double best = choose(task);
            sum += best;
            amount += Math.abs(best);
        }
        double value = sum + YearAccount.ROUNDING * amount;
        if (value < bestValue) {
            bestValue = value;
            bestPrices = copy(prices);
            bestShares = shares.clone();
        }
        return value;
    }

    private void priceLevels() {
        for (int level = 0; level < levels.count(); level++) {
            for (int year = 0; year < years; year++) {
                double price = 0;
                for (int resource = 0; resource < resources; resource++) {
                    price += prices[year][resource] * levels.uses[level][resource];
                }
                levelPrices[level][year] = price;
            }
        }
    }

    /** Chooses the year of a task; returns its profit there; negative infinity where no year comes into question for a must. */
    private double choose(int task) {
        double best = Double.NEGATIVE_INFINITY;
        int choice = YearPlan.NEVER;
        for (int year = YearPlan.NEVER; year < years; year++) {
            if (options.is(task, year)) {
                double profit = profit(task, year);
                if (profit > best) {
                    best = profit;
                    choice = year;
                }
            }
        }
        chosen[task] = choice;
        return best;
    }

    /** Returns what a choice is worth to a task, less what it pays, at the present prices. */
    double profit(int task, int year) {
        Task each = problem.tasks().get(task);
        if (year == YearPlan.NEVER) {
            return each.valueNever();
        }
        double profit = each.values().get(year);
        double[] ofYear = prices[year];
        double[] own = levels.ownUses[task];
        for (int resource = 0; resource < resources; resource++) {
            profit -= ofYear[resource] * own[resource];
        }
        int[] reached = levels.levelsOf[task];
        int[] slots = levels.slotsOf[task];
        for (int i = 0; i < reached.length; i++) {
            profit -= shares[slots[i] * years + year] * levelPrices[reached[i]][year];
        }
        return profit;
    }

    /** Returns the options without those that no plan worth more than a known one can have. */
    YearOptions reduced(double knownValue) {
        prices = copy(bestPrices);
        shares = bestShares.clone();
        double value = evaluate();
        double least = knownValue - YearAccount.ROUNDING * (1 + Math.abs(knownValue));
        YearOptions reduced = options.copy();
        for (int task = 0; task < chosen.length; task++) {
            double best = profit(task, chosen[task]);
            for (int year = YearPlan.NEVER; year < years; year++) {
                if (options.is(task, year) && value - (best - profit(task, year)) < least) {
                    reduced.exclude(task, year);
                }
            }
        }
        return reduced;
    }

    private static double[][] copy(double[][] rows) {
        return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
    }
}
