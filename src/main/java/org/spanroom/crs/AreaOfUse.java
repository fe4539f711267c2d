package org.spanroom.crs;

/**
 * The part of the world that a reference system is made for, as the EPSG dataset bounds it, in degrees; across the date line the
 * west edge is the greater number.
 */
record AreaOfUse(double westDeg, double southDeg, double eastDeg, double northDeg) {
    private static final double LEAST_MARGIN_DEG = 1;
    private static final double MOST_MARGIN_DEG = 6;

    /** Returns true for a place in the area or about as far beside it as the area is wide, where such a system is used too. */
    boolean isNear(double lonDeg, double latDeg) {
        double widthDeg = westDeg <= eastDeg ? eastDeg - westDeg : eastDeg - westDeg + 360;
        double marginLonDeg = margin(widthDeg);
        double marginLatDeg = margin(northDeg - southDeg);
        double fromMiddleDeg = Math.abs(Math.IEEEremainder(lonDeg - (westDeg + widthDeg / 2), 360));
        return fromMiddleDeg <= widthDeg / 2 + marginLonDeg
                && latDeg >= southDeg - marginLatDeg
                && latDeg <= northDeg + marginLatDeg;
    }

    /** Returns places all over the area, longitude before latitude, in this many steps each way. */
    double[] grid(int steps) {
        double widthDeg = westDeg <= eastDeg ? eastDeg - westDeg : eastDeg - westDeg + 360;
        double[] places = new double[2 * (steps + 1) * (steps + 1)];
        for (int i = 0, at = 0; i <= steps; i++) {
            for (int j = 0; j <= steps; j++) {
                places[at++] = Math.IEEEremainder(westDeg + widthDeg * i / steps, 360);
                places[at++] = southDeg + (northDeg - southDeg) * j / steps;
            }
        }
        return places;
    }

    private static double margin(double sizeDeg) {
        return Math.max(LEAST_MARGIN_DEG, Math.min(MOST_MARGIN_DEG, sizeDeg));
    }
}
