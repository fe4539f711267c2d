package org.spanroom.input;

import java.util.List;

/** How far an outline extends, to separate vaults from other outlines. */
final class VaultExtent {
    /**
     * The widest outline that is used. Vaults are a few meters wide, cable chambers under buildings some tens, and some owners draw the whole plot;
     * parks and districts are wider. Our judgment.
     */
    static final double MOST_M = 1000;

    /** Of latitude, on WGS 84; between 110.6 and 111.7 km. */
    private static final double M_PER_DEG = 111_000;

    private VaultExtent() {}

    /**
     * Returns the larger of the extents from west to east and from south to north, from the first vertex on; to about 1 %.
     *
     * @param rings ordinates in degrees, longitude first
     * @param dimension numbers of each vertex
     */
    static double ofM(List<double[]> rings, int dimension) {
        double[] first = rings.get(0);
        double west = 0;
        double east = 0;
        double south = 0;
        double north = 0;
        for (double[] ring : rings) {
            for (int at = 0; at + 1 < ring.length; at += dimension) {
                double lon = Math.IEEEremainder(ring[at] - first[0], 360);
                west = Math.min(west, lon);
                east = Math.max(east, lon);
                south = Math.min(south, ring[at + 1] - first[1]);
                north = Math.max(north, ring[at + 1] - first[1]);
            }
        }
        double shrink = Math.cos(Math.toRadians(first[1]));
        return M_PER_DEG * Math.max((east - west) * shrink, north - south);
    }
}
