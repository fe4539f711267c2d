package org.spanroom.rank;

import java.util.SortedMap;

/** A piecewise-linear function from a quantity to a value, constant beyond its first and last point. */
final class ValueCurve {
    private final double[] quantities;
    private final double[] values;

    ValueCurve(SortedMap<Double, Double> points) {
        quantities = points.keySet().stream().mapToDouble(Double::doubleValue).toArray();
        values = points.values().stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Returns the largest value between two quantities; not a number if one is not known. */
    double mostValue(double from, double to) {
        double most = Math.max(valueAt(from), valueAt(to));
        for (int i = 0; i < quantities.length; i++) {
            if (from < quantities[i] && quantities[i] < to) {
                most = Math.max(most, values[i]);
            }
        }
        return most;
    }

    /** Returns the value of a quantity; not a number for one that is not known. */
    double valueAt(double quantity) {
        if (Double.isNaN(quantity)) {
            return Double.NaN;
        }
        // A curve has a handful of points, and a simulation reads it some hundred times a span.
        int above = 0;
        while (above < quantities.length && quantities[above] < quantity) {
            above++;
        }
        if (above < quantities.length && quantities[above] == quantity) {
            return values[above];
        }
        if (above == 0) {
            return values[0];
        }
        if (above == values.length) {
            return values[above - 1];
        }
        double share = (quantity - quantities[above - 1]) / (quantities[above] - quantities[above - 1]);
        return values[above - 1] + share * (values[above] - values[above - 1]);
    }
}
