package org.spanroom.sample;

/**
 * The plane that the city is drawn in: meters east and north of its origin, far out in the open ocean.
 *
 * <p>Method: equirectangular about the origin on the WGS 84 ellipsoid, with the radii of curvature there. It is no true map:
 * 35 km north of the origin, east-west distances come out 0.4 % short. Lengths are therefore taken with the radii of
 * curvature at their own latitude, which for lines of a few kilometers is good to a few parts in a million.
 */
final class CityPlane {
    /** Some 300 km off the nearest coast; no land is near. */
    static final double ORIGIN_LON_DEG = -127.5;

    static final double ORIGIN_LAT_DEG = 38.9;

    /** Semi-major axis and flattening of WGS 84 (NGA.STND.0036, from memory). */
    private static final double AXIS_M = 6_378_137;

    private static final double FLATTENING = 1 / 298.257223563;
    private static final double ECCENTRICITY_SQUARED = FLATTENING * (2 - FLATTENING);

    private static final double M_PER_LON_DEG = eastM(ORIGIN_LAT_DEG);
    private static final double M_PER_LAT_DEG = northM(ORIGIN_LAT_DEG);

    /** 1e-8 degrees are about a millimeter; more digits would only make the files longer. */
    private static final double DEGREE_STEPS = 1e8;

    private CityPlane() {}

    static double lonDeg(double x) {
        return Math.rint((ORIGIN_LON_DEG + x / M_PER_LON_DEG) * DEGREE_STEPS) / DEGREE_STEPS;
    }

    static double latDeg(double y) {
        return Math.rint((ORIGIN_LAT_DEG + y / M_PER_LAT_DEG) * DEGREE_STEPS) / DEGREE_STEPS;
    }

    /** Returns meters on the ground for one meter of the plane eastwards, so far north. */
    static double eastRatio(double y) {
        return eastM(ORIGIN_LAT_DEG + y / M_PER_LAT_DEG) / M_PER_LON_DEG;
    }

    static double northRatio(double y) {
        return northM(ORIGIN_LAT_DEG + y / M_PER_LAT_DEG) / M_PER_LAT_DEG;
    }

    /** Length of a degree of longitude: radius of curvature in the prime vertical times the cosine of latitude. */
    private static double eastM(double latDeg) {
        double latRad = StrictMath.toRadians(latDeg);
        double sin = StrictMath.sin(latRad);
        double primeVerticalM = AXIS_M / Math.sqrt(1 - ECCENTRICITY_SQUARED * sin * sin);
        return StrictMath.toRadians(primeVerticalM * StrictMath.cos(latRad));
    }

    /** Length of a degree of latitude: radius of curvature in the meridian. */
    private static double northM(double latDeg) {
        double sin = StrictMath.sin(StrictMath.toRadians(latDeg));
        double w = 1 - ECCENTRICITY_SQUARED * sin * sin;
        return StrictMath.toRadians(AXIS_M * (1 - ECCENTRICITY_SQUARED) / (w * Math.sqrt(w)));
    }
}
