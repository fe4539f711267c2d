package org.spanroom.sample;

import java.util.List;

/**
 * A size of outdoor fiber cable: outside diameter in inches and mass in pounds per 1000 ft, as published data sheets give
 * them for loose-tube cables of 12 to 288 fibers and ribbon cables of 12 to 432.
 */
record CableSize(double outsideIn, double massLbKft) {
    static final List<CableSize> ALL = List.of(
            new CableSize(0.400, 47),
            new CableSize(0.472, 74),
            new CableSize(0.490, 69),
            new CableSize(0.496, 81),
            new CableSize(0.551, 101),
            new CableSize(0.620, 112),
            new CableSize(0.688, 154),
            new CableSize(0.710, 134),
            new CableSize(0.727, 131),
            new CableSize(0.826, 235),
            new CableSize(0.865, 215),
            new CableSize(0.963, 268));

    private static final double MOST_RATIO = 0.75;

    static final CableSize SMALLEST = ALL.get(0);
    static final CableSize HEAVIEST = ALL.get(ALL.size() - 1);

    double areaIn2() {
        return Math.PI / 4 * outsideIn * outsideIn;
    }

    /** Draws a cable that leaves play in a pipe: half of its inside or less for most, three quarters at the very most. */
    static CableSize drawFor(double insideIn, Chance chance) {
        List<CableSize> fitting = within(chance.happens(0.8) ? 0.55 : MOST_RATIO, insideIn);
        return fitting.isEmpty() ? SMALLEST : chance.pick(fitting);
    }

    /** Returns the thickest cable that leaves play in a pipe. */
    static CableSize thickestFor(double insideIn) {
        List<CableSize> fitting = within(MOST_RATIO, insideIn);
        return fitting.isEmpty() ? SMALLEST : fitting.get(fitting.size() - 1);
    }

    private static List<CableSize> within(double ratio, double insideIn) {
        return ALL.stream()
                .filter(cable -> cable.outsideIn() <= ratio * insideIn)
                .toList();
    }
}
