package org.spanroom.model;

/** Points of a sample below which a given share of it lies. */
public final class Quantile {
    private Quantile() {}

    /**
     * Returns the value that so large a share of a sample does not exceed, linear between order statistics (type 7 of Hyndman and Fan
     * 1996, from memory: the default of common statistics libraries).
     *
     * @param sortedInUnit the sample in rising order, at least one value
     */
    public static double inUnit(double[] sortedInUnit, double shareRatio) {
        double place = shareRatio * (sortedInUnit.length - 1);
        int below = (int) place;
        int above = Math.min(below + 1, sortedInUnit.length - 1);
        return sortedInUnit[below] + (place - below) * (sortedInUnit[above] - sortedInUnit[below]);
    }
}
