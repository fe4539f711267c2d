package org.spanroom.model;

import java.util.List;
import java.util.Locale;

/** A span's score with the parts that it is the sum of. */
public record Score(List<Part> parts) {
    /**
     * One criterion's share of a score.
     *
     * @param criterion the criterion's name, as in columns
     * @param unit what {@code quantityInUnit} is counted in
     * @param quantityInUnit the absolute quantity that was judged
     * @param valueRatio how good the quantity is, 0 to 1
     * @param weightRatio the criterion's weight as a share of all weights
     */
    public record Part(String criterion, String unit, double quantityInUnit, double valueRatio, double weightRatio) {
        public Part {
            Check.within("valueRatio", valueRatio, 0, 1);
            Check.within("weightRatio", weightRatio, 0, 1);
        }

        /** Returns the points out of 100 that this criterion gives. */
        public double points() {
            return 100 * valueRatio * weightRatio;
        }

        /** Returns the quantity with its unit, for people. */
        public String quantityText() {
            return String.format(Locale.ROOT, "%.1f %s", quantityInUnit, unit);
        }
    }

    public Score {
        parts = List.copyOf(parts);
    }

    /** Returns the sum of all parts' points, 0 to 100. */
    public double totalPoints() {
        double total = 0;
        for (Part part : parts) {
            total += part.points();
        }
        return total;
    }
}
