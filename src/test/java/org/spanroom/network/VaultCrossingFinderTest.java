package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.LongStream;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.spanroom.model.Line;
import org.spanroom.model.network.Vault;

/** Passes against two judges that we did not write: GeographicLib's distances along sampled lines, and JTS's buffers. */
class VaultCrossingFinderTest {
    private static final double TOLERANCE_M = 1;
    private static final double SAMPLE_M = 0.03;
    private static final GeometryFactory JTS = new GeometryFactory();

    static LongStream seeds() {
        return LongStream.range(0, 24);
    }

    /** Random walks of some hundred meters anywhere to 80 degrees, a third of them over the antimeridian. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void passesOfPointsAreTheRunsOfSamplesWithinTolerance(long seed) {
        var random = new Random(seed);
        double lonDeg = seed % 3 == 0 ? 180 : 360 * random.nextDouble() - 180;
        double latDeg = 160 * random.nextDouble() - 80;
        Line line = walk(random, lonDeg, latDeg, 9, 12);
        List<Vault> vaults = new ArrayList<>();
        for (int i = 0; i < 25; i++) {
            double[] place =
                    Sketch.degrees(lonDeg, latDeg, 40 * random.nextDouble() - 20, 40 * random.nextDouble() - 20);
            vaults.add(new Vault(i, "V" + i, place[0], place[1], List.of(), OptionalDouble.empty(), ""));
        }
        Track track = Track.of(line, new GroundStep());

        List<VaultCrossing> passes = find(track, vaults);

        for (Vault vault : vaults) {
            List<double[]> runs = sampledRuns(track, vault);
            List<VaultCrossing> own =
                    passes.stream().filter(p -> p.vault() == vault.sequence()).toList();
            // a run or a gap shorter than the sampling may be seen by one and not by the other
            List<VaultCrossing> wide = own.stream()
                    .filter(p -> p.reachToM() - p.reachFromM() > 2 * SAMPLE_M)
                    .toList();
            assertThat(wide.size()).isBetween(Math.min(runs.size(), own.size()), own.size());
            for (double[] run : runs) {
                assertThat(own).anySatisfy(pass -> {
                    assertThat(pass.reachFromM()).isLessThanOrEqualTo(run[0] + SAMPLE_M);
                    assertThat(pass.reachToM()).isGreaterThanOrEqualTo(run[1] - SAMPLE_M);
                    assertThat(pass.offsetM()).isLessThanOrEqualTo(run[2] + 1e-4);
                    assertThat(geodesicM(track, pass.cutFromM(), vault)).isCloseTo(pass.offsetM(), within(1e-4));
                });
            }
            assertThat(runs)
                    .hasSameSizeAs(own.stream()
                            .filter(p ->
                                    runs.stream().anyMatch(run -> run[0] <= p.reachToM() && run[1] >= p.reachFromM()))
                            .toList());
        }
    }

    /** The length within tolerance, and inside, that JTS finds by buffering and intersecting in plane meters. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void passesOfFootprintsHaveTheLengthsOfBufferAndIntersection(long seed) {
        var random = new Random(seed);
        Coordinate[] ring = star(random);
        Vault vault = footprint(ring);
        Line line = walk(random, Sketch.LON_DEG, Sketch.LAT_DEG, 14, 6);
        Track track = Track.of(line, new GroundStep());

        List<VaultCrossing> passes = find(track, List.of(vault));

        Geometry outline = JTS.createPolygon(ring);
        Geometry drawn = JTS.createLineString(meters(track));
        double withinM = drawn.intersection(outline.buffer(TOLERANCE_M, 400)).getLength();
        assertThat(passes.stream()
                        .mapToDouble(p -> p.reachToM() - p.reachFromM())
                        .sum())
                .isCloseTo(withinM, within(2e-3));
        for (VaultCrossing pass : passes) {
            Geometry part = part(track, pass.reachFromM(), pass.reachToM());
            Geometry inside = part.intersection(outline);
            assertThat(pass.isInside()).isEqualTo(inside.getLength() > 1e-6);
            assertThat(pass.offsetM()).isCloseTo(part.distance(outline), within(1e-3));
            if (pass.isInside()) {
                Geometry cutOut = part(track, pass.cutFromM(), pass.cutToM());
                assertThat(cutOut.intersection(outline).getLength()).isCloseTo(inside.getLength(), within(2e-3));
                assertThat(outline.distance(cutOut.getInteriorPoint())).isLessThanOrEqualTo(TOLERANCE_M + 1e-3);
            }
        }
    }

    private static List<VaultCrossing> find(Track track, List<Vault> vaults) {
        var places = new VaultPlaces(vaults, 0);
        return new VaultCrossingFinder(places, new VaultSightings(vaults.size()), TOLERANCE_M, 5).find(track);
    }

    private static Line walk(Random random, double lonDeg, double latDeg, int vertices, double sizeM) {
        double[] lonLat = new double[2 * vertices];
        for (int i = 0; i < vertices; i++) {
            double[] place =
                    Sketch.degrees(lonDeg, latDeg, sizeM * random.nextGaussian(), sizeM * random.nextGaussian());
            lonLat[2 * i] = place[0];
            lonLat[2 * i + 1] = place[1];
        }
        return Line.wrap(lonLat, false);
    }

    private static List<double[]> sampledRuns(Track track, Vault vault) {
        List<double[]> runs = new ArrayList<>();
        double[] run = {};
        for (double placeM = 0; placeM < track.lengthM(); placeM += SAMPLE_M) {
            double meters = geodesicM(track, placeM, vault);
            if (meters > TOLERANCE_M) {
                run = new double[0];
            } else if (run.length == 0) {
                run = new double[] {placeM, placeM, meters};
                runs.add(run);
            } else {
                run[1] = placeM;
                run[2] = Math.min(run[2], meters);
            }
        }
        return runs;
    }

    private static double geodesicM(Track track, double placeM, Vault vault) {
        double lonDeg = track.lonAt(placeM);
        double latDeg = track.latAt(placeM);
        if (Math.abs(latDeg - vault.latDeg()) > 1e-3) {
            return Double.POSITIVE_INFINITY;
        }
        return Geodesic.WGS84.Inverse(latDeg, lonDeg, vault.latDeg(), vault.lonDeg()).s12;
    }

    /** A ring around the origin, not convex, of meters. */
    private static Coordinate[] star(Random random) {
        Coordinate[] ring = new Coordinate[11];
        for (int i = 0; i < 10; i++) {
            double radiusM = 1 + 4 * random.nextDouble();
            ring[i] = new Coordinate(radiusM * Math.cos(i * Math.PI / 5), radiusM * Math.sin(i * Math.PI / 5));
        }
        ring[10] = ring[0].copy();
        return ring;
    }

    private static Vault footprint(Coordinate[] ring) {
        double[] lonLat = new double[2 * ring.length];
        for (int i = 0; i < ring.length; i++) {
            double[] place = Sketch.degrees(Sketch.LON_DEG, Sketch.LAT_DEG, ring[i].x, ring[i].y);
            lonLat[2 * i] = place[0];
            lonLat[2 * i + 1] = place[1];
        }
        List<Line> rings = List.of(Line.wrap(lonLat, false));
        return new Vault(0, "V", Sketch.LON_DEG, Sketch.LAT_DEG, rings, OptionalDouble.empty(), "");
    }

    private static Coordinate[] meters(Track track) {
        Coordinate[] meters = new Coordinate[track.size()];
        for (int i = 0; i < meters.length; i++) {
            meters[i] = metersAt(track, track.alongM(i));
        }
        return meters;
    }

    private static Coordinate metersAt(Track track, double placeM) {
        var way = Geodesic.WGS84.Inverse(Sketch.LAT_DEG, Sketch.LON_DEG, track.latAt(placeM), track.lonAt(placeM));
        double azimuth = Math.toRadians(way.azi1);
        return new Coordinate(way.s12 * Math.sin(azimuth), way.s12 * Math.cos(azimuth));
    }

    private static Geometry part(Track track, double fromM, double toM) {
        List<Coordinate> part = new ArrayList<>();
        part.add(metersAt(track, fromM));
        for (int i = 0; i < track.size(); i++) {
            if (track.alongM(i) > fromM && track.alongM(i) < toM) {
                part.add(metersAt(track, track.alongM(i)));
            }
        }
        part.add(metersAt(track, toM));
        return JTS.createLineString(part.toArray(Coordinate[]::new));
    }
}
