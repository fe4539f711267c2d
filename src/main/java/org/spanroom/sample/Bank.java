package org.spanroom.sample;

/**
 * Ducts laid together along some legs of a street.
 *
 * @param direct true where the pipes lie in the ground without a duct around them
 * @param spacingM sideways distance at which one duct is drawn from the next; 0 where all are drawn on one line
 * @param shakeM standard deviation of the draughtsman's hand, for each vertex
 * @param load what its ducts hold, where that is not left to chance
 */
record Bank(
        String id,
        BoreType type,
        Bore bore,
        boolean direct,
        int ducts,
        String owner,
        String surface,
        int year,
        String quality,
        double spacingM,
        double shakeM,
        Load load) {
    /** What a bank's ducts hold. */
    enum Load {
        ORDINARY,
        /** As many innerducts as go in, each with the heaviest cable. */
        HEAVY,
        /** One innerduct with the lightest cable. */
        LIGHT,
        /** One innerduct with the thickest cable. */
        THICK
    }

    /** Returns how far to the left of the bank's middle a duct is drawn, by its number from 0. */
    double asideM(int duct) {
        return spacingM * (duct - (ducts - 1) / 2.0);
    }
}
