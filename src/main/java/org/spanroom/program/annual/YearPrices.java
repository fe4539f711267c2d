package org.spanroom.program.annual;

import java.util.List;

/** What a unit of each resource counts as in each year, in the unit of the values. Immutable. */
final class YearPrices {
    private final double[][] prices;

    /** Creates from a price for each year and resource, which are at least 0. */
    YearPrices(double[][] prices) {
        this.prices = prices.clone();
        for (int year = 0; year < prices.length; year++) {
            this.prices[year] = prices[year].clone();
        }
    }

    int years() {
        return prices.length;
    }

    double of(int year, int resource) {
        return prices[year][resource];
    }

    /** Returns the prices of a year. */
    double[] ofYear(int year) {
        return prices[year].clone();
    }

    /** Returns what some uses count as in a year. */
    double of(int year, double[] uses) {
        double sum = 0;
        for (int resource = 0; resource < uses.length; resource++) {
            sum += prices[year][resource] * uses[resource];
        }
        return sum;
    }

    /** Returns what all limits together count as; limits that are infinite must have no price. */
    double of(List<List<Double>> limits) {
        double sum = 0;
        for (int year = 0; year < prices.length; year++) {
            for (int resource = 0; resource < prices[year].length; resource++) {
                sum += prices[year][resource] == 0 ? 0 : prices[year][resource] * limits.get(year).get(resource);
            }
        }
        return sum;
    }
}
