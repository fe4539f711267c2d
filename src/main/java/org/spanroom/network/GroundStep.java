package org.spanroom.network;

/**
 * The length and direction on the ground of one straight step of a drawn line; measured again and again with one object.
 *
 * <p>Method: the step's differences of longitude and latitude times the radii of curvature of the WGS 84 ellipsoid at the
 * step's own middle latitude, {@code east = N cos(phi) dLambda}, {@code north = M dPhi} (radii of curvature: EPSG Guidance
 * Note 7-2; the middle-latitude form is Gauss's, without its terms of third order). A step that is longer than 5 km times
 * the cosine of its latitude, which near the poles is any step, is measured as a geodesic by Vincenty's inverse formula
 * (Survey Review XXIII 176, 1975), its direction halfway between its azimuths at both ends.
 *
 * <p>Accuracy against the geodesic: better than 2e-7 of the length up to 19 000 km anywhere, poles and antimeridian
 * included; 0.6 % for steps between near-antipodal points, where Vincenty's iteration fails and a sphere is used.
 * Directions refer to the meridian through the middle of the step: those of two neighboring steps turn against each
 * other by {@code d tan(phi) / R}, 0.001 degrees for steps of 100 m at 45 degrees. Heights do not enter.
 */
final class GroundStep {
    /** Semi-major axis and flattening of WGS 84, EPSG ellipsoid 7030. */
    static final double EQUATOR_RADIUS_M = 6_378_137.0;

    static final double FLATTENING_RATIO = 1 / 298.257223563;

    private static final double POLE_RADIUS_M = EQUATOR_RADIUS_M * (1 - FLATTENING_RATIO);
    private static final double ECCENTRICITY_SQUARED = FLATTENING_RATIO * (2 - FLATTENING_RATIO);
    private static final double LONG_STEP_M = 5_000;
    private static final int MOST_ITERATIONS = 100;

    /** Mean radius of WGS 84, (2a + b) / 3 (Moritz, Geodetic Reference System 1980). */
    private static final double MEAN_RADIUS_M = (2 * EQUATOR_RADIUS_M + POLE_RADIUS_M) / 3;

    private double eastM;
    private double northM;
    private double lengthM;

    double eastM() {
        return eastM;
    }

    double northM() {
        return northM;
    }

    double lengthM() {
        return lengthM;
    }

    /** Measures the step between two points in degrees and returns its length. */
    double measure(double lon0Deg, double lat0Deg, double lon1Deg, double lat1Deg) {
        double dLon = Math.toRadians(differenceDeg(lon0Deg, lon1Deg));
        double dLat = Math.toRadians(lat1Deg - lat0Deg);
        double cos = Math.cos(Math.toRadians((lat0Deg + lat1Deg) / 2));
        double w2 = 1 - ECCENTRICITY_SQUARED * (1 - cos * cos);
        double primeM = EQUATOR_RADIUS_M / Math.sqrt(w2);
        eastM = primeM * cos * dLon;
        northM = primeM * (1 - ECCENTRICITY_SQUARED) / w2 * dLat;
        lengthM = Math.sqrt(eastM * eastM + northM * northM);
        if (lengthM > LONG_STEP_M * cos) {
            measureLong(Math.toRadians(lat0Deg), Math.toRadians(lat1Deg), dLon);
        }
        return lengthM;
    }

    /**
     * Returns how unevenly a step's length is spread over its degrees: at the share {@code t} of the degrees, length has
     * come to the share {@code t (1 + skew (1 - t) / 2)}. First order in the change of scale over the step, which is
     * {@code -tan(phi) M / N} for longitude ({@code d(N cos phi) / d phi = -M sin phi}) and {@code 3 e^2 sin(phi) cos(phi) /
     * w^2} for latitude, by radian; what is left is of the order of its square. 0 for steps long enough to be measured as
     * geodesics: they are cut evenly.
     */
    static double skewRatio(double lon0Deg, double lat0Deg, double lon1Deg, double lat1Deg) {
        double dLon = Math.toRadians(differenceDeg(lon0Deg, lon1Deg));
        double dLat = Math.toRadians(lat1Deg - lat0Deg);
        double middle = Math.toRadians((lat0Deg + lat1Deg) / 2);
        double cos = Math.cos(middle);
        double sin = Math.sin(middle);
        double w2 = 1 - ECCENTRICITY_SQUARED * sin * sin;
        double meridianByPrime = (1 - ECCENTRICITY_SQUARED) / w2;
        double east = cos * dLon;
        double north = meridianByPrime * dLat;
        double squared = east * east + north * north;
        if (Math.sqrt(squared) * EQUATOR_RADIUS_M > LONG_STEP_M * cos) {
            return 0;
        }
        double eastChange = -sin / cos * meridianByPrime;
        double northChange = 3 * ECCENTRICITY_SQUARED * sin * cos / w2;
        return -(east * east * eastChange + north * north * northChange) / squared * dLat;
    }

    /** Returns the way from one longitude to another, the short way round, -180 to 180. */
    static double differenceDeg(double fromLonDeg, double toLonDeg) {
        double difference = toLonDeg - fromLonDeg;
        return difference > 180 || difference < -180 ? Math.IEEEremainder(difference, 360) : difference;
    }

    /** Meters for one degree of longitude at a latitude. */
    static double eastMPerDeg(double latDeg) {
        double cos = Math.cos(Math.toRadians(latDeg));
        return Math.toRadians(EQUATOR_RADIUS_M * cos / Math.sqrt(1 - ECCENTRICITY_SQUARED * (1 - cos * cos)));
    }

    /** Meters for one degree of latitude at a latitude. */
    static double northMPerDeg(double latDeg) {
        double cos = Math.cos(Math.toRadians(latDeg));
        double w2 = 1 - ECCENTRICITY_SQUARED * (1 - cos * cos);
        return Math.toRadians(EQUATOR_RADIUS_M * (1 - ECCENTRICITY_SQUARED) / (w2 * Math.sqrt(w2)));
    }

    /** Vincenty's inverse formula, in the author's notation: U reduced latitudes, lambda longitude on the auxiliary sphere. */
    private void measureLong(double lat0Rad, double lat1Rad, double dLonRad) {
        double u0 = Math.atan((1 - FLATTENING_RATIO) * Math.tan(lat0Rad));
        double u1 = Math.atan((1 - FLATTENING_RATIO) * Math.tan(lat1Rad));
        double sinU0 = Math.sin(u0);
        double cosU0 = Math.cos(u0);
        double sinU1 = Math.sin(u1);
        double cosU1 = Math.cos(u1);
        double lambda = dLonRad;
        for (int round = 0; round < MOST_ITERATIONS; round++) {
            double sinLambda = Math.sin(lambda);
            double cosLambda = Math.cos(lambda);
            double sinSigma = Math.hypot(cosU1 * sinLambda, cosU0 * sinU1 - sinU0 * cosU1 * cosLambda);
            if (sinSigma == 0) {
                break;
            }
            double cosSigma = sinU0 * sinU1 + cosU0 * cosU1 * cosLambda;
            double sigma = Math.atan2(sinSigma, cosSigma);
            double sinAlpha = cosU0 * cosU1 * sinLambda / sinSigma;
            double cos2Alpha = 1 - sinAlpha * sinAlpha;
            double cos2SigmaM = cos2Alpha < 1e-14 ? 0 : cosSigma - 2 * sinU0 * sinU1 / cos2Alpha;
            double c = FLATTENING_RATIO / 16 * cos2Alpha * (4 + FLATTENING_RATIO * (4 - 3 * cos2Alpha));
            double bracket = cos2SigmaM + c * cosSigma * (2 * cos2SigmaM * cos2SigmaM - 1);
            double next = dLonRad + (1 - c) * FLATTENING_RATIO * sinAlpha * (sigma + c * sinSigma * bracket);
            boolean settled = Math.abs(next - lambda) < 1e-13;
            lambda = next;
            if (settled) {
                double azimuth0 =
                        Math.atan2(cosU1 * Math.sin(lambda), cosU0 * sinU1 - sinU0 * cosU1 * Math.cos(lambda));
                double azimuth1 =
                        Math.atan2(cosU0 * Math.sin(lambda), cosU0 * sinU1 * Math.cos(lambda) - sinU0 * cosU1);
                point(arc(sigma, sinSigma, cosSigma, cos2Alpha, cos2SigmaM), azimuth0, azimuth1);
                return;
            }
        }
        measureOnSphere(lat0Rad, lat1Rad, dLonRad);
    }

    private static double arc(double sigma, double sinSigma, double cosSigma, double cos2Alpha, double cos2SigmaM) {
        double ratio = EQUATOR_RADIUS_M / POLE_RADIUS_M;
        double uSquared = cos2Alpha * (ratio * ratio - 1);
        double a = 1 + uSquared / 16384 * (4096 + uSquared * (-768 + uSquared * (320 - 175 * uSquared)));
        double b = uSquared / 1024 * (256 + uSquared * (-128 + uSquared * (74 - 47 * uSquared)));
        double m2 = cos2SigmaM * cos2SigmaM;
        double inner = cosSigma * (2 * m2 - 1) - b / 6 * cos2SigmaM * (4 * sinSigma * sinSigma - 3) * (4 * m2 - 3);
        return POLE_RADIUS_M * a * (sigma - b * sinSigma * (cos2SigmaM + b / 4 * inner));
    }

    private void point(double meters, double azimuth0Rad, double azimuth1Rad) {
        double azimuth = azimuth0Rad + Math.IEEEremainder(azimuth1Rad - azimuth0Rad, 2 * Math.PI) / 2;
        lengthM = meters;
        eastM = meters * Math.sin(azimuth);
        northM = meters * Math.cos(azimuth);
    }

    private void measureOnSphere(double lat0Rad, double lat1Rad, double dLonRad) {
        double h = square(Math.sin((lat1Rad - lat0Rad) / 2))
                + Math.cos(lat0Rad) * Math.cos(lat1Rad) * square(Math.sin(dLonRad / 2));
        double meters = 2 * MEAN_RADIUS_M * Math.asin(Math.sqrt(Math.min(1, h)));
        double azimuth = Math.atan2(eastM, northM);
        point(meters, azimuth, azimuth);
    }

    private static double square(double value) {
        return value * value;
    }
}
