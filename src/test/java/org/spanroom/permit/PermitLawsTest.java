package org.spanroom.permit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.network.Span;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.Stretch;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.permit.ZoneTouch;

/** What is always true, on seeded random spans and zones. */
class PermitLawsTest {
    private static final double SAME_M = 1e-6;

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void stretchesAddUpAndLieWithinTheSpan(long seed) {
        var random = new Random(seed);
        Span span = walk(random);
        Permits permits = GridMap.assessor(0, zones(random)).assess(span);

        assertThat(permits.touches()).allSatisfy(touch -> {
            assertThat(touch.stretches().stream().mapToDouble(Stretch::lengthM).sum())
                    .isCloseTo(touch.lengthM(), within(SAME_M));
            assertThat(touch.lengthM()).isLessThanOrEqualTo(span.lengthM() + SAME_M);
        });
        assertThat(permits.lengthM()).isLessThanOrEqualTo(span.lengthM() + SAME_M);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theOtherDirectionMeasuresTheSame(long seed) {
        var random = new Random(seed);
        double[] way = way(random);
        Zone[] zones = zones(random);
        Span there = GridMap.span(way);
        Span back = GridMap.span(reversed(way));

        Permits onWay = GridMap.assessor(0.5, zones).assess(there);
        Permits onWayBack = GridMap.assessor(0.5, zones).assess(back);

        assertThat(onWayBack.recoveryNeeds()).isEqualTo(onWay.recoveryNeeds());
        assertThat(onWayBack.avoided()).isEqualTo(onWay.avoided());
        assertThat(onWayBack.touches()).hasSameSizeAs(onWay.touches());
        for (int i = 0; i < onWay.touches().size(); i++) {
            ZoneTouch forth = onWay.touches().get(i);
            ZoneTouch other = onWayBack.touches().get(i);
            assertThat(other.lengthM()).isCloseTo(forth.lengthM(), within(SAME_M));
            assertThat(other.atFrom()).isEqualTo(forth.atTo());
            assertThat(other.zone()).isEqualTo(forth.zone());
        }
    }

    /** A zone cut in two at a slanted line holds together what it held whole. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void cuttingAZoneInTwoChangesNothingInAll(long seed) {
        var random = new Random(seed);
        Span span = walk(random);
        double bottom = between(random, -100, 300);
        double top = between(random, -100, 300);
        double[] whole = {-150, -150, 450, -150, 450, 400, -150, 400};
        double[] left = {-150, -150, bottom, -150, top, 400, -150, 400};
        double[] right = {bottom, -150, 450, -150, 450, 400, top, 400};

        double uncutM = GridMap.assessor(0, GridMap.zone("W", "rail", whole))
                .assess(span)
                .lengthM("rail");
        Permits cut = GridMap.assessor(0, GridMap.zone("L", "rail", left), GridMap.zone("R", "rail", right))
                .assess(span);

        assertThat(cut.touches().stream().mapToDouble(ZoneTouch::lengthM).sum()).isCloseTo(uncutM, within(SAME_M));
        assertThat(cut.lengthM("rail")).isCloseTo(uncutM, within(SAME_M));
    }

    /** Cells that cover the plane without overlap hold together the whole length that counts. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aPartitionOfThePlaneHoldsTheWholeLength(long seed) {
        var random = new Random(seed);
        Span span = walk(random);
        var cells = new ArrayList<Zone>();
        double[][] corners = corners(random, 9);
        for (int row = 0; row < 8; row++) {
            for (int column = 0; column < 8; column++) {
                double[] a = corners[9 * row + column];
                double[] b = corners[9 * row + column + 1];
                double[] c = corners[9 * row + column + 10];
                double[] d = corners[9 * row + column + 9];
                cells.add(GridMap.zone(
                        "C" + cells.size(), "school", new double[] {a[0], a[1], b[0], b[1], c[0], c[1], d[0], d[1]}));
            }
        }
        Collections.shuffle(cells, random);

        Permits permits =
                GridMap.assessor(cells, GridMap.settings("", false, 0)).assess(span);

        assertThat(permits.touches().stream().mapToDouble(ZoneTouch::lengthM).sum())
                .isCloseTo(span.lengthM(), within(SAME_M));
        assertThat(permits.lengthM("school")).isCloseTo(span.lengthM(), within(SAME_M));
    }

    private static double[][] corners(Random random, int side) {
        double[][] corners = new double[side * side][];
        double jitterM = 25;
        for (int i = 0; i < corners.length; i++) {
            int row = i / side;
            corners[i] = new double[] {
                -700 + 200.0 * (i % side) + between(random, -jitterM, jitterM),
                -700 + 200.0 * row + between(random, -jitterM, jitterM)
            };
        }
        return corners;
    }

    static Span walk(Random random) {
        return GridMap.span(way(random));
    }

    /** Returns a way of some hundred meters with steps of 5 to 60 m. */
    static double[] way(Random random) {
        double[] xy = new double[2 * (4 + random.nextInt(9))];
        double heading = random.nextDouble() * Math.PI / 2;
        for (int i = 2; i < xy.length; i += 2) {
            heading += random.nextGaussian() * 0.4;
            double stepM = between(random, 5, 60);
            xy[i] = xy[i - 2] + stepM * Math.cos(heading);
            xy[i + 1] = xy[i - 1] + stepM * Math.sin(heading);
        }
        return xy;
    }

    static Zone[] zones(Random random) {
        List<String> kinds = List.of("cut_ban", "night_only", "heritage", "rail");
        var zones = new ArrayList<Zone>();
        for (int i = 0; i < 8; i++) {
            double x = between(random, -100, 250);
            double y = between(random, -100, 250);
            String kind = kinds.get(random.nextInt(kinds.size()));
            double sizeM = between(random, 1, 100);
            zones.add(GridMap.zone("Z" + i, kind, star(random, x, y, sizeM, 1), star(random, x, y, sizeM / 3, 1)));
        }
        return zones.toArray(Zone[]::new);
    }

    /** Returns a ring about a point whose vertices are between the given size and half of it, so that it cannot cross itself. */
    static double[] star(Random random, double x, double y, double sizeM, double flatRatio) {
        double[] ring = new double[2 * (5 + random.nextInt(20))];
        for (int i = 0; i < ring.length; i += 2) {
            double angle = Math.PI * 2 * i / ring.length;
            double radiusM = between(random, sizeM / 2, sizeM);
            ring[i] = x + radiusM * Math.cos(angle);
            ring[i + 1] = y + flatRatio * radiusM * Math.sin(angle);
        }
        return ring;
    }

    static double between(Random random, double least, double most) {
        return least + random.nextDouble() * (most - least);
    }

    private static double[] reversed(double[] xy) {
        double[] back = new double[xy.length];
        for (int i = 0; i < xy.length; i += 2) {
            back[i] = xy[xy.length - 2 - i];
            back[i + 1] = xy[xy.length - 1 - i];
        }
        return back;
    }
}
