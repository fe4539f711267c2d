package org.spanroom.model.network;

/**
 * How many equal round items go into a bore. For up to seven in a round bore, and up to four in a square one, by the proved smallest
 * containers (Birgin and Gentil, New and improved results for packing identical unitary radius circles, Tables 1 and 2); above that by
 * area, which is never too few.
 */
public final class BoreCapacity {
    /** Diameter of the smallest circle around this many circles of diameter 1, from none to seven. */
    private static final double[] ROUND_RATIOS = {0, 1, 2, 2.154701, 2.414214, 2.701302, 3, 3};

    /** Side of the smallest square around this many circles of diameter 1, from none to four. */
    private static final double[] SQUARE_RATIOS = {0, 1, 1.707107, 1.965926, 2};

    private BoreCapacity() {}

    /** Returns how many items of an outside diameter go into a bore of an inside diameter, or of a side where it is square. */
    public static int items(BoreShape shape, double insideMm, double outsideMm) {
        double[] ratios = shape == BoreShape.SQUARE ? SQUARE_RATIOS : ROUND_RATIOS;
        int proved = ratios.length - 1;
        while (ratios[proved] * outsideMm > insideMm) {
            proved--;
        }
        if (proved + 1 < ratios.length) {
            return proved;
        }
        double squares = (insideMm / outsideMm) * (insideMm / outsideMm);
        double byAreaRatio = shape == BoreShape.SQUARE ? 4 / Math.PI : 1;
        return Math.max(proved, (int) Math.floor(squares * byAreaRatio));
    }
}
