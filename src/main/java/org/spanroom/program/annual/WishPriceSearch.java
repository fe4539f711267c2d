package org.spanroom.program.annual;

import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.spanroom.program.design.SearchSettings;
import org.spanroom.program.design.Spread;

/**
 * Finds prices under which the bound is small: step by step, prices of limits rise where designs of the years use more than there is, and what serving a connection counts moves to the
 * later years where these drop what earlier ones serve. The mean of the later steps is taken: the bound is convex in the prices. Designs are good ones only, so
 * there is no promise that the prices are the best; the bound at them is valid whatever they are.
 */
final class WishPriceSearch {
    private static final double FIRST_STEP = 0.4;
    private static final double LAST_STEP = 0.06;
    private static final double WORTH_STEP_RATIO = 1;
    private static final double FIRST_PRICE_RATIO = 0.5;
    private static final double MEAN_SHARE = 0.25;
    private static final double RARE_WEIGHT = 0.02;
    private static final long SEED_STEP = 0x9E3779B97F4A7C15L;

    private final YearProblem problem;
    private final List<Wish> wishes;
    private final boolean areMustsRequired;
    private final double[][] least;
    private final double[] weights;
    private double[][] prices;
    private double[][] worth;

    private WishPriceSearch(YearProblem problem, boolean areMustsRequired) {
        this.problem = problem;
        this.areMustsRequired = areMustsRequired;
        wishes = problem.connections().orElseThrow().wishes();
        least = wishes.stream()
                .map(wish -> WishPrices.leastWorth(wish, areMustsRequired && wish.isMust()))
                .toArray(double[][]::new);
        worth = copy(least);
        weights = new double[problem.tasks().size()];
        Arrays.fill(weights, 1);
        prices = firstPrices();
    }

    /** What all is worth, spread over all that there is; it falls with the years, so that work is done in the year whose end needs it first. */
    private double[][] firstPrices() {
        double value = wishes.stream()
                .mapToDouble(wish -> wish.values().stream().mapToDouble(Double::doubleValue).max().orElse(0))
                .sum();
        for (Task task : problem.tasks()) {
            value += Math.max(0, task.values().stream().mapToDouble(Double::doubleValue).max().orElse(0) - task.valueNever());
        }
        double[][] first = new double[problem.years()][problem.resources()];
        for (int resource = 0; resource < problem.resources(); resource++) {
            double sum = 0;
            for (List<Double> limits : problem.limits()) {
                sum += Double.isInfinite(limits.get(resource)) ? 0 : limits.get(resource);
            }
            for (int year = 0; year < problem.years(); year++) {
                boolean isFree = Double.isInfinite(problem.limits().get(year).get(resource));
                double ratio = FIRST_PRICE_RATIO * (1.5 - (year + 0.5) / problem.years());
                first[year][resource] = isFree ? 0 : ratio * value / problem.resources() / Math.max(sum, 1e-6);
            }
        }
        return first;
    }

    /** Returns the prices after so many steps. */
    static WishPrices of(
            YearProblem problem,
            boolean areMustsRequired,
            int steps,
            SearchSettings settings,
            Spread spread,
            BooleanSupplier stop) {
        return new WishPriceSearch(problem, areMustsRequired).run(steps, settings, spread, stop);
    }

    private WishPrices run(int steps, SearchSettings settings, Spread spread, BooleanSupplier stop) {
        double[][] meanPrices = new double[problem.years()][problem.resources()];
        double[][] meanWorth = new double[worth.length][problem.years()];
        double total = 0;
        for (int step = 0; step < steps && !(stop.getAsBoolean() && total > 0); step++) {
            var years = new PricedYears(problem, now(), areMustsRequired);
            var designs =
                    PricedDesigns.of(problem, years, settings.withSeed(settings.seed() + step * SEED_STEP), spread);
            double progress = (double) step / steps;
            if (progress >= 1 - MEAN_SHARE || step + 1 == steps) {
                total++;
                add(meanPrices, prices);
                add(meanWorth, worth);
            }
            double length = FIRST_STEP * Math.pow(LAST_STEP / FIRST_STEP, progress);
            move(designs, length);
        }
        if (total > 0) {
            scale(meanPrices, 1 / total);
            scale(meanWorth, 1 / total);
            prices = meanPrices;
            worth = meanWorth;
            raiseToLeast();
        }
        return now();
    }

    private WishPrices now() {
        return new WishPrices(new YearPrices(prices), copy(worth), WishPrices.shares(problem, weights));
    }

    private void move(PricedDesigns designs, double length) {
        for (int year = 0; year < prices.length; year++) {
            for (int resource = 0; resource < prices[year].length; resource++) {
                double limit = problem.limits().get(year).get(resource);
                if (Double.isFinite(limit)) {
                    double excess = (designs.used(year, resource) - limit) / Math.max(limit, 1e-6);
                    prices[year][resource] *= Math.exp(length * Math.max(-1, Math.min(1, excess)));
                }
            }
        }
        for (int demand = 0; demand < worth.length; demand++) {
            for (int year = 1; year < problem.years(); year++) {
                int dropped = (designs.isServed(demand, year - 1) ? 1 : 0) - (designs.isServed(demand, year) ? 1 : 0);
                worth[demand][year] += WORTH_STEP_RATIO * length * dropped * least[demand][0];
            }
        }
        raiseToLeast();
        for (int task = 0; task < weights.length; task++) {
            weights[task] += ((designs.isDone(task) ? 1 : RARE_WEIGHT) - weights[task]) / 4;
        }
    }

    /** Makes the worth of each connection fall with the years again, from the first year's down to no less than the least. */
    private void raiseToLeast() {
        for (int demand = 0; demand < worth.length; demand++) {
            double[] own = worth[demand];
            boolean isRequired = areMustsRequired && wishes.get(demand).isMust();
            for (int year = own.length - 1; year >= 0; year--) {
                double floor = Math.max(least[demand][year], year + 1 < own.length ? own[year + 1] : 0);
                own[year] = isRequired && year > wishes.get(demand).lastYear()
                        ? 0
                        : Math.min(least[demand][0], Math.max(own[year], floor));
            }
            own[0] = least[demand][0];
        }
    }

    private static void add(double[][] sum, double[][] addend) {
        for (int row = 0; row < sum.length; row++) {
            for (int column = 0; column < sum[row].length; column++) {
                sum[row][column] += addend[row][column];
            }
        }
    }

    private static void scale(double[][] all, double factor) {
        for (double[] row : all) {
            for (int column = 0; column < row.length; column++) {
                row[column] *= factor;
            }
        }
    }

    private static double[][] copy(double[][] all) {
        return Arrays.stream(all).map(double[]::clone).toArray(double[][]::new);
    }
}
