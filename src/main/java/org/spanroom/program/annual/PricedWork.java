package org.spanroom.program.annual;

import java.util.Arrays;

/**
 * What a piece of work is worth under prices if it is left to itself, and what is lost where it has to be done by some year.
 *
 * @param worth the most of its value less its price, over all years in which it can be done and never
 * @param year the year where that is, or {@link YearPlan#NEVER}
 * @param lossBy of each year, how much less it is worth if it has to be done by its end; infinite where it cannot be; it never rises with the years
 * @param yearBy of each year, when it is then done; {@link YearPlan#NEVER} where it cannot be
 */
@SuppressWarnings("ArrayRecordComponent") // Inside the package only; never changed or compared.
record PricedWork(double worth, int year, double[] lossBy, int[] yearBy) {
    /** Returns what a task is worth; {@code uses} is what it takes as it counts here. */
    static PricedWork of(Task task, double[] uses, YearPrices prices, boolean hasToBeDone) {
        double[] nets = new double[prices.years()];
        Arrays.fill(nets, Double.NEGATIVE_INFINITY);
        for (int year = task.firstYear(); year <= task.lastYear(); year++) {
            nets[year] = task.values().get(year) - prices.of(year, uses);
        }
        return of(nets, hasToBeDone ? Double.NEGATIVE_INFINITY : task.valueNever());
    }

    /** Returns what building a new duct is worth, which has no value of its own. */
    static PricedWork ofDuct(int firstYear, double[] uses, YearPrices prices) {
        double[] nets = new double[prices.years()];
        Arrays.fill(nets, Double.NEGATIVE_INFINITY);
        for (int year = firstYear; year < nets.length; year++) {
            nets[year] = -prices.of(year, uses);
        }
        return of(nets, 0);
    }

    private static PricedWork of(double[] nets, double never) {
        int[] yearBy = new int[nets.length];
        int best = YearPlan.NEVER;
        for (int year = 0; year < nets.length; year++) {
            if (nets[year] > (best < 0 ? Double.NEGATIVE_INFINITY : nets[best])) {
                best = year;
            }
            yearBy[year] = best;
        }
        boolean isDone = best >= 0 && nets[best] > never;
        double worth = isDone ? nets[best] : never;
        double[] lossBy = new double[nets.length];
        for (int year = 0; year < nets.length; year++) {
            lossBy[year] = yearBy[year] < 0 ? Double.POSITIVE_INFINITY : worth - nets[yearBy[year]];
        }
        return new PricedWork(worth, isDone ? best : YearPlan.NEVER, lossBy, yearBy);
    }

    /** Returns whether it can be done by the end of a year. */
    boolean isPossibleBy(int year) {
        return yearBy[year] >= 0;
    }

    /** Returns the part of the loss that having it by the end of a year, and not of the next one only, takes; all parts from a year on add up to its loss. */
    double lossOf(int year) {
        return Math.max(0, lossBy[year] - (year + 1 < lossBy.length ? lossBy[year + 1] : 0));
    }
}
