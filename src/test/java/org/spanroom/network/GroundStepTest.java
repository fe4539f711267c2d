package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.LongStream;
import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.Line;

/** Reference: GeographicLib 2.0 (C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87, 2013), exact to nanometers. */
class GroundStepTest {
    private static final int STEPS = 2000;

    private final GroundStep step = new GroundStep();

    static LongStream seeds() {
        return LongStream.range(0, 10);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void stepsAnywhereHaveTheirGeodesicLengthAndDirection(long seed) {
        var random = new Random(seed);
        for (int i = 0; i < STEPS; i++) {
            double latDeg = Math.toDegrees(Math.asin(2 * random.nextDouble() - 1));
            checkFrom(360 * random.nextDouble() - 180, latDeg, random, Math.pow(10, 8 * random.nextDouble() - 2));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void stepsNearAndOverThePolesHaveTheirGeodesicLength(long seed) {
        var random = new Random(seed);
        for (int i = 0; i < STEPS; i++) {
            double fromPoleDeg = Math.pow(10, 7 * random.nextDouble() - 6);
            double latDeg = Math.copySign(90 - fromPoleDeg, random.nextDouble() - 0.5);
            checkLength(360 * random.nextDouble() - 180, latDeg, random, Math.pow(10, 8 * random.nextDouble() - 2));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void stepsOverTheAntimeridianGoTheShortWay(long seed) {
        var random = new Random(seed);
        for (int i = 0; i < STEPS; i++) {
            double lonDeg = 180 - Math.pow(10, 3 * random.nextDouble() - 4);
            checkFrom(lonDeg, 160 * random.nextDouble() - 80, random, Math.pow(10, 8 * random.nextDouble() - 2));
        }
    }

    private void checkFrom(double lonDeg, double latDeg, Random random, double meters) {
        GeodesicData there = checkLength(lonDeg, latDeg, random, meters);
        double halfWayDeg = there.azi1 + Math.IEEEremainder(there.azi2 - there.azi1, 360) / 2;
        double azimuthDeg = Math.toDegrees(Math.atan2(step.eastM(), step.northM()));
        // below a meter the coordinates' own rounding turns the step
        if (meters > 1) {
            assertThat(Math.IEEEremainder(azimuthDeg - halfWayDeg, 360)).isCloseTo(0, within(1e-4));
        }
    }

    private GeodesicData checkLength(double lonDeg, double latDeg, Random random, double meters) {
        GeodesicData there = Geodesic.WGS84.Direct(latDeg, lonDeg, 360 * random.nextDouble(), meters);
        GeodesicData exact = Geodesic.WGS84.Inverse(latDeg, lonDeg, there.lat2, there.lon2);
        double measuredM = step.measure(lonDeg, latDeg, there.lon2, there.lat2);
        assertThat(measuredM)
                .as("from %s %s to %s %s", lonDeg, latDeg, there.lon2, there.lat2)
                .isCloseTo(exact.s12, within(2e-7 * exact.s12 + 2e-8));
        return exact;
    }

    /** Lines that a transverse Mercator zone would stretch: east along a parallel over this many zones of 6 degrees. */
    @ParameterizedTest(name = "{1} zones at latitude {0}")
    @CsvSource({"0, 1", "0, 5", "45, 3", "60, 4", "-78, 6", "83.9, 10"})
    void linesOverSeveralZonesHaveTheirGeodesicLength(double latDeg, int zones) {
        double[] lonLat = new double[2 * (zones * 600 + 1)];
        double exactM = 0;
        for (int i = 0; i <= zones * 600; i++) {
            lonLat[2 * i] = -180 + i * 0.01;
            lonLat[2 * i + 1] = latDeg + 0.001 * Math.sin(i);
            if (i > 0) {
                exactM += Geodesic.WGS84.Inverse(lonLat[2 * i - 1], lonLat[2 * i - 2], lonLat[2 * i + 1], lonLat[2 * i])
                        .s12;
            }
        }
        assertThat(Track.of(Line.wrap(lonLat, false), step).lengthM()).isCloseTo(exactM, within(1e-7 * exactM));
    }

    @Test
    void nearAntipodalStepsAreOutByLessThanTheStatedShare() {
        double exactM = Geodesic.WGS84.Inverse(0.3, 0, -0.2, 179.8).s12;
        assertThat(step.measure(0, 0.3, 179.8, -0.2)).isCloseTo(exactM, within(0.006 * exactM));
    }

    @Test
    void aStepToTheSamePlaceHasNoLength() {
        assertThat(step.measure(12, 90, 12, 90)).isZero();
        assertThat(step.measure(-180, 10, 180, 10)).isZero();
    }

    /** Degrees of meridian and parallel at 0 and 45 degrees, against GeographicLib over a thousandth of a degree. */
    @ParameterizedTest
    @CsvSource({"0", "45", "-60", "89"})
    void scalesAtALatitudeAreThoseOfTheGeodesic(double latDeg) {
        double eastM = Geodesic.WGS84.Inverse(latDeg, -0.0005, latDeg, 0.0005).s12 * 1000;
        double northM = Geodesic.WGS84.Inverse(latDeg - 0.0005, 0, latDeg + 0.0005, 0).s12 * 1000;
        assertThat(GroundStep.eastMPerDeg(latDeg)).isCloseTo(eastM, within(1e-3));
        assertThat(GroundStep.northMPerDeg(latDeg)).isCloseTo(northM, within(1e-3));
    }

    /** Steps of up to 4 km, cut anywhere: both parts have the length that the whole step's account gives them. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void partsOfAStepHaveTheirGeodesicLength(long seed) {
        var random = new Random(seed);
        for (int i = 0; i < STEPS; i++) {
            double latDeg = 140 * random.nextDouble() - 70;
            double meters = Math.pow(10, 3.2 * random.nextDouble()) * Math.cos(Math.toRadians(latDeg)) * 2.5;
            GeodesicData end = Geodesic.WGS84.Direct(latDeg, 179.99, 360 * random.nextDouble(), meters);
            Track track = Track.of(Line.ofXy(179.99, latDeg, end.lon2, end.lat2), step);
            double placeM = track.lengthM() * random.nextDouble();
            double exactM = Geodesic.WGS84.Inverse(latDeg, 179.99, track.latAt(placeM), track.lonAt(placeM)).s12;
            assertThat(placeM).isCloseTo(exactM, within(1e-6 * track.lengthM()));
        }
    }
}
