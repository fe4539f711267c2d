package org.spanroom.sample;

/**
 * Ducts laid together along some legs of a street.
 *
 * @param direct true where the pipes are in the ground without a duct around them
 * @param spacingM sideways distance at which one duct is drawn from the next; 0 where all are drawn on one line
 * @param shakeM standard deviation of the drafter's hand, for each vertex
 * @param load what its ducts hold, where that is not left to chance
 * @param use what most of them hold where it is
 * @param wet whether water is in most of its ducts and in its vaults
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
        Load load,
        Use use,
        boolean wet) {
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

    /** How the ducts of an ordinary bank are used. */
    enum Use {
        PLAIN,
        /** In most of them loose cables are beside as many innerducts as go in. */
        CROWDED,
        /** Into most of them sleeves were laid in an earlier campaign. */
        SLEEVED
    }

    /** Returns how far to the left of the bank's middle a duct is drawn, by its number from 0. */
    double asideM(int duct) {
        return spacingM * (duct - (ducts - 1) / 2.0);
    }
}
