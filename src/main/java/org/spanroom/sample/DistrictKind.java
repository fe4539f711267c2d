package org.spanroom.sample;

import java.util.List;

/** The kinds of district that the city consists of, over and over. */
enum DistrictKind {
    OLD_QUARTER("Old Quarter", List.of(10, 5, 4, 3, 10, 8, 14, 2), 0.10),
    HARBOR("Harbor", List.of(20, 10, 12, 12, 6, 12, 1, 8), 0.22),
    RINGS("Rings", List.of(14, 4, 12, 12, 14, 3, 6, 4), 0.08),
    HILLSIDE("Hillside", List.of(20, 10, 6, 14, 3, 2, 0, 18), 0.05);

    private final String title;

    @SuppressWarnings("ImmutableEnumChecker") // made by List.of
    private final List<Integer> boreWeights;

    private final double wetRatio;

    DistrictKind(String title, List<Integer> boreWeights, double wetRatio) {
        this.title = title;
        this.boreWeights = boreWeights;
        this.wetRatio = wetRatio;
    }

    String title() {
        return title;
    }

    /** Returns how often each type of duct occurs here, in the order of {@link BoreType}. */
    int[] boreWeights() {
        return boreWeights.stream().mapToInt(Integer::intValue).toArray();
    }

    /** Returns the share of its banks with water. */
    double wetRatio() {
        return wetRatio;
    }

    /** Returns whether lines and vaults are drawn with elevations. */
    boolean isDrawnWithHeights() {
        return this == HILLSIDE;
    }

    /** Returns the ground's height at meters east and north of the district's center. */
    double groundM(double east, double north) {
        double ripple = 0.8 * StrictMath.sin(east / 210) + 0.6 * StrictMath.sin(north / 170);
        if (this != HILLSIDE) {
            return 4.5 + ripple;
        }
        // Streets across the hill climb by 3 to 23 in a hundred.
        return 110 + 0.13 * north + 7 * StrictMath.sin(north / 70) + 5 * StrictMath.sin(east / 130) + ripple;
    }
}
