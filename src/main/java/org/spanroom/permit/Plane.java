package org.spanroom.permit;

/**
 * A plane in meters in which lines and outlines run straight: the transverse Mercator projection of WGS 84 about a central
 * meridian, with scale 1 on it.
 *
 * <p>Method: L. Kr&uuml;ger's series of 1912 to the fourth order in the third flattening, as EPSG Guidance Note 7-2 gives them
 * (method 9807), with the conformal latitude in C. F. F. Karney's form (Transverse Mercator with an accuracy of a few
 * nanometers, Journal of Geodesy 85, 2011, equations 7 to 12). Accuracy: better than a micrometer within some 30 degrees of the
 * meridian (from memory, after Karney).
 *
 * <p>The projection is conformal, so that a straight edge departs from the geodesic between its ends by no more than
 * {@code L^2 x / (8 R^2)}, 0.4 mm for 1 km at 110 km from the meridian; every projected system of surveying draws its edges as
 * straight to about as much. Only shares of steps are taken from the plane, never lengths.
 *
 * @param meridianDeg longitude of the central meridian
 */
record Plane(double meridianDeg) {
    /** Meridians are this far apart: spans of a city share one plane or two, and so do the zones made ready for them. */
    private static final double MERIDIANS_DEG = 2;

    private static final double EQUATOR_RADIUS_M = 6_378_137.0;
    private static final double FLATTENING_RATIO = 1 / 298.257223563;
    private static final double ECCENTRICITY = Math.sqrt(FLATTENING_RATIO * (2 - FLATTENING_RATIO));
    private static final double N = FLATTENING_RATIO / (2 - FLATTENING_RATIO);
    private static final double RADIUS_M = EQUATOR_RADIUS_M / (1 + N) * (1 + N * N / 4 + N * N * N * N / 64);
    private static final double[] H = {
        N / 2 - 2.0 / 3 * N * N + 5.0 / 16 * N * N * N + 41.0 / 180 * N * N * N * N,
        13.0 / 48 * N * N - 3.0 / 5 * N * N * N + 557.0 / 1440 * N * N * N * N,
        61.0 / 240 * N * N * N - 103.0 / 140 * N * N * N * N,
        49561.0 / 161280 * N * N * N * N
    };

    /** Returns the plane for what lies about a longitude. */
    static Plane about(double lonDeg) {
        return new Plane(MERIDIANS_DEG * Math.rint(lonDeg / MERIDIANS_DEG));
    }

    /** Puts a place into {@code xy} at an index: meters east and north. */
    void project(double lonDeg, double latDeg, double[] xy, int at) {
        double lambda = Math.toRadians(Math.IEEEremainder(lonDeg - meridianDeg, 360));
        double conformal = conformalTangent(Math.tan(Math.toRadians(latDeg)));
        double cos = Math.cos(lambda);
        double xi = Math.atan2(conformal, cos);
        double eta = asinh(Math.sin(lambda) / Math.hypot(conformal, cos));
        double east = eta;
        double north = xi;
        for (int k = 0; k < H.length; k++) {
            double twice = 2.0 * (k + 1);
            double grown = Math.exp(twice * eta);
            east += H[k] * Math.cos(twice * xi) * (grown - 1 / grown) / 2;
            north += H[k] * Math.sin(twice * xi) * (grown + 1 / grown) / 2;
        }
        xy[at] = RADIUS_M * east;
        xy[at + 1] = RADIUS_M * north;
    }

    private static double conformalTangent(double tangent) {
        double secant = Math.sqrt(1 + tangent * tangent);
        double sine = ECCENTRICITY * tangent / secant;
        double sigma = Math.sinh(ECCENTRICITY * 0.5 * Math.log((1 + sine) / (1 - sine)));
        return tangent * Math.sqrt(1 + sigma * sigma) - sigma * secant;
    }

    private static double asinh(double value) {
        double size = Math.abs(value);
        return Math.copySign(Math.log1p(size + size * size / (1 + Math.sqrt(1 + size * size))), value);
    }
}
