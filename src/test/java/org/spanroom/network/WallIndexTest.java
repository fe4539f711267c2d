package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.spanroom.model.Line;
import org.spanroom.model.network.Vault;

/** Looked-up walls against all walls, and against JTS, which has another method. */
class WallIndexTest {
    private static final GeometryFactory JTS = new GeometryFactory();

    @ParameterizedTest
    @ValueSource(ints = {80, 700, 5000})
    void looksUpWhatJtsFindsAmongAllWalls(int vertices) {
        var random = new Random(vertices);
        double[] ring = star(random, vertices, 100);
        WallIndex looked = WallIndex.of(ring);
        Polygon polygon = polygon(ring);
        for (int i = 0; i < 300; i++) {
            double x = 300 * random.nextDouble() - 150;
            double y = 300 * random.nextDouble() - 150;
            var place = new Coordinate(x, y);
            boolean inside = SimplePointInAreaLocator.locate(place, polygon) == Location.INTERIOR;

            assertThat(looked.contains(x, y)).isEqualTo(inside);
            assertThat(looked.distanceM(x, y))
                    .isCloseTo(polygon.getExteriorRing().distance(JTS.createPoint(place)), within(1e-9));
        }
    }

    @Test
    void fewWallsAndManyMeetAStepAlike() {
        var random = new Random(5);
        double[] ring = star(random, 400, 30);
        WallIndex looked = WallIndex.of(ring);
        WallIndex all = WallIndex.all(ring);
        for (int i = 0; i < 200; i++) {
            double west = 80 * random.nextDouble() - 40;
            double south = 80 * random.nextDouble() - 40;
            int[] near = looked.near(west, south, west + 3, south + 3);
            List<Integer> touching = new ArrayList<>();
            for (int wall : all.near(west, south, west + 3, south + 3)) {
                boolean apart = Math.max(ring[wall], ring[wall + 2]) < west
                        || Math.min(ring[wall], ring[wall + 2]) > west + 3
                        || Math.max(ring[wall + 1], ring[wall + 3]) < south
                        || Math.min(ring[wall + 1], ring[wall + 3]) > south + 3;
                if (!apart) {
                    touching.add(wall);
                }
            }

            assertThat(near)
                    .containsExactly(
                            touching.stream().mapToInt(Integer::intValue).toArray());
        }
    }

    /** Each route passes through; all walls against all steps would be 150 million tries, which take minutes. */
    @Test
    void anOutlineOfManyWallsDoesNotHang() {
        int routes = 1_500;
        var sketch = new StringBuilder("vault W -600,0\nvault E 600,0\n");
        for (int i = 0; i < routes; i++) {
            sketch.append("route r").append(i).append(" d").append(i).append(" -600,0 600,0\n");
        }
        Sketch drawn = Sketch.of(sketch.toString());
        drawn.vaults.add(outline("P", circle(100_000, 400)));

        Sketch.Result cut = assertTimeoutPreemptively(Duration.ofSeconds(60), () -> drawn.cut());

        assertThat(cut.network().spans()).hasSize(2 * routes);
    }

    private static Vault outline(String id, double[] ring) {
        double[] lonLat = new double[ring.length];
        for (int at = 0; at < ring.length; at += 2) {
            lonLat[at] = Sketch.LON_DEG + ring[at] / 85_000;
            lonLat[at + 1] = Sketch.LAT_DEG + ring[at + 1] / 111_000;
        }
        return new Vault(
                9, id, Sketch.LON_DEG, Sketch.LAT_DEG, List.of(Line.wrap(lonLat, false)), OptionalDouble.empty(), "");
    }

    private static double[] circle(int vertices, double radiusM) {
        double[] ring = new double[2 * vertices + 2];
        for (int i = 0; i <= vertices; i++) {
            double angle = 2 * Math.PI * (i % vertices) / vertices;
            ring[2 * i] = radiusM * Math.cos(angle);
            ring[2 * i + 1] = radiusM * Math.sin(angle);
        }
        return ring;
    }

    /** A closed ring around the origin, not convex. */
    private static double[] star(Random random, int vertices, double radiusM) {
        double[] ring = new double[2 * vertices + 2];
        for (int i = 0; i < vertices; i++) {
            double angle = 2 * Math.PI * i / vertices;
            double outM = radiusM * (0.5 + random.nextDouble());
            ring[2 * i] = outM * Math.cos(angle);
            ring[2 * i + 1] = outM * Math.sin(angle);
        }
        ring[2 * vertices] = ring[0];
        ring[2 * vertices + 1] = ring[1];
        return ring;
    }

    private static Polygon polygon(double[] ring) {
        Coordinate[] vertices = new Coordinate[ring.length / 2];
        for (int i = 0; i < vertices.length; i++) {
            vertices[i] = new Coordinate(ring[2 * i], ring[2 * i + 1]);
        }
        return JTS.createPolygon(vertices);
    }
}
