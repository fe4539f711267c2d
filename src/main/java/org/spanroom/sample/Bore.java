package org.spanroom.sample;

/**
 * The inside of a duct, in inches.
 *
 * @param shape "round" or "square"
 */
record Bore(String shape, double insideIn) {
    /**
     * Smallest container for 1 to 4 equal circles, in their diameters: 1, 2, 1 + 2/sqrt(3), 1 + sqrt(2) for a circle (proved;
     * R. L. Graham 1968, after the survey of Graham, Lubachevsky, Nurmela and Ostergard 1998).
     */
    private static final double[] ROUND_RATIOS = {0, 1, 2, 2.154701, 2.414214};

    /** The same for a square: 1, 1 + 1/sqrt(2), (3.931851653)/2, 2 (Birgin and Gentil 2010, Table 2). */
    private static final double[] SQUARE_RATIOS = {0, 1, 1.707107, 1.965926, 2};

    /** What was ever pulled in had a little play. */
    private static final double PLAY = 1.01;

    static final int MOST_INNERDUCTS = 4;

    boolean isSquare() {
        return shape.equals("square");
    }

    /** Returns how many equal innerducts really go in, 4 at most. */
    int roomFor(double outsideDiameterIn) {
        double[] ratios = isSquare() ? SQUARE_RATIOS : ROUND_RATIOS;
        int count = MOST_INNERDUCTS;
        while (count > 0 && outsideDiameterIn * ratios[count] * PLAY > insideIn) {
            count--;
        }
        return count;
    }

    /** Returns whether a set goes in that needs a round bore of this diameter. */
    boolean takes(double neededInsideIn) {
        return neededInsideIn * PLAY <= insideIn;
    }

    double areaIn2() {
        return isSquare() ? insideIn * insideIn : Math.PI / 4 * insideIn * insideIn;
    }
}
