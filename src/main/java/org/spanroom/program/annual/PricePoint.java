package org.spanroom.program.annual;

import java.util.Arrays;

/** A point of a {@link PriceSearch}: parts of tasks and of levels in each year, and the duals of its rows. */
final class PricePoint {
    private final int years;
    private final int resources;
    /** Of each task, of each year. */
    final double[] parts;
    /** Of each level, of each year. */
    final double[] levelParts;
    /** Twice the last parts less those before. */
    final double[] partsAhead;

    final double[] levelsAhead;
    /** Of each task. */
    final double[] taskPrices;
    /** Of each slot, of each year. */
    final double[] weights;
    /** Of each year, of each resource. */
    final double[][] prices;

    PricePoint(int tasks, SetUpLevels levels, int years, int resources) {
        this.years = years;
        this.resources = resources;
        parts = new double[tasks * years];
        partsAhead = new double[tasks * years];
        levelParts = new double[levels.count() * years];
        levelsAhead = new double[levels.count() * years];
        taskPrices = new double[tasks];
        weights = new double[levels.slots * years];
        prices = new double[years][resources];
    }

    void clear() {
        Arrays.fill(parts, 0);
        Arrays.fill(levelParts, 0);
        Arrays.fill(taskPrices, 0);
        Arrays.fill(weights, 0);
        for (double[] ofYear : prices) {
            Arrays.fill(ofYear, 0);
        }
    }

    void set(PricePoint other) {
        clear();
        add(other);
    }

    void add(PricePoint other) {
        add(parts, other.parts);
        add(levelParts, other.levelParts);
        add(taskPrices, other.taskPrices);
        add(weights, other.weights);
        for (int year = 0; year < years; year++) {
            add(prices[year], other.prices[year]);
        }
    }

    private static void add(double[] to, double[] more) {
        for (int i = 0; i < to.length; i++) {
            to[i] += more[i];
        }
    }

    void setMean(PricePoint sum, int count) {
        setQuotient(parts, sum.parts, count);
        setQuotient(levelParts, sum.levelParts, count);
        setQuotient(taskPrices, sum.taskPrices, count);
        setQuotient(weights, sum.weights, count);
        for (int year = 0; year < years; year++) {
            setQuotient(prices[year], sum.prices[year], count);
        }
    }

    private static void setQuotient(double[] to, double[] sum, int count) {
        for (int i = 0; i < to.length; i++) {
            to[i] = sum[i] / count;
        }
    }

    double primalDistance(PricePoint other) {
        return Math.sqrt(squares(parts, other.parts) + squares(levelParts, other.levelParts));
    }

    double dualDistance(PricePoint other) {
        double squares = squares(taskPrices, other.taskPrices) + squares(weights, other.weights);
        for (int year = 0; year < years; year++) {
            squares += squares(prices[year], other.prices[year]);
        }
        return Math.sqrt(squares);
    }

    private static double squares(double[] one, double[] other) {
        double squares = 0;
        for (int i = 0; i < one.length; i++) {
            squares += (one[i] - other[i]) * (one[i] - other[i]);
        }
        return squares;
    }

    /** Returns what the parts use, or those ahead, of each year, of each resource. */
    double[][] used(SetUpLevels levels, boolean isAhead) {
        var used = new double[years][resources];
        addUsed(used, levels.ownUses, isAhead ? partsAhead : parts);
        addUsed(used, levels.uses, isAhead ? levelsAhead : levelParts);
        return used;
    }

    private void addUsed(double[][] used, double[][] uses, double[] of) {
        for (int each = 0; each < uses.length; each++) {
            for (int year = 0; year < years; year++) {
                double part = of[each * years + year];
                if (part != 0) {
                    for (int resource = 0; resource < resources; resource++) {
                        used[year][resource] += part * uses[each][resource];
                    }
                }
            }
        }
    }
}
