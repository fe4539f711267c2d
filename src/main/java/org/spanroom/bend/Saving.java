package org.spanroom.bend;

import org.jspecify.annotations.Nullable;

/**
 * What joining some groups of corners saves: bounds at once; the exact value takes one additional fit, and is calculated when it is
 * requested.
 */
final class Saving {
    static final Saving NONE = new Saving(-1, 0, null, null);

    /** Savings closer than this are the same: the last digits of coordinates must not choose between equal places. */
    private static final double TIE = 0.2;

    private final double least;
    private final double most;
    private final Fits.@Nullable Part separate;
    private final @Nullable Fits fits;
    private double exact = Double.NaN;

    private Saving(double least, double unfitted, Fits.@Nullable Part separate, @Nullable Fits fits) {
        this.least = least;
        this.most = least + unfitted;
        this.separate = separate;
        this.fits = fits;
    }

    /** Takes what the path of one bend saves over a free one, and the path of several bends with its cost where not fitted. */
    static Saving of(double least, double unfitted, Fits.Part separate, Fits fits) {
        return new Saving(least, unfitted, separate, fits);
    }

    boolean isPositive() {
        return least > 0 || (most > 0 && exact() > 0);
    }

    /** Compares exact values, which are calculated only where their bounds leave it open; the other's is needed next. */
    boolean isNoLessThan(Saving other) {
        return least >= other.most - TIE || least >= other.exact() - TIE || exact() >= other.exact() - TIE;
    }

    private double exact() {
        if (Double.isNaN(exact)) {
            exact = fits != null && separate != null
                    ? least + fits.fit(separate).cost()
                    : least;
        }
        return exact;
    }
}
