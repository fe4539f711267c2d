package org.spanroom.permit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.model.network.Span;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.Stretch;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.permit.ZoneTouch;

/** Zones reach a tolerance beyond their outlines; cases that can be read off the grid, whose meters are 0.02 % off the plane's. */
class ZoneToleranceTest {
    private static final Offset<Double> MM = within(1e-3);
    private static final double TOLERANCE_M = 0.5;
    private static final double SLIVER_M = 0.5;

    private final Span straight = GridMap.span(0, 0, 100, 0);

    private static Permits permits(Span span, double sliverM, double toleranceM, Zone... zones) {
        return GridMap.assessor(List.of(zones), GridMap.settings("", false, sliverM, toleranceM))
                .assess(span);
    }

    private static ZoneTouch only(Permits permits) {
        assertThat(permits.touches()).hasSize(1);
        return permits.touches().get(0);
    }

    private static List<Stretch> stretches(Permits permits) {
        return only(permits).stretches();
    }

    private static void assertStretch(Stretch found, double fromM, double toM) {
        assertThat(found.fromM()).isCloseTo(fromM, MM);
        assertThat(found.toM()).isCloseTo(toM, MM);
    }

    /**
     * A span along the edge of a zone, drawn with noise, is inside from end to end in one piece, whatever side the noise falls to and
     * however the line is turned. Without a tolerance it falls into many.
     */
    @ParameterizedTest(name = "noise {0} m")
    @ValueSource(doubles = {0.0001, 0.001, 0.01, 0.1})
    void aSpanAlongAnEdgeIsOnePiece(double noiseM) {
        int piecesWithoutTolerance = 0;
        for (int seed = 0; seed < 20; seed++) {
            var random = new Random(seed);
            double angle = seed * Math.PI / 10;
            double[] line = new double[2 * 41];
            for (int i = 0; i < line.length; i += 2) {
                turn(line, i, 1.25 * i, noiseM * (2 * random.nextDouble() - 1), angle);
            }
            double[] box = {-20, 0, 120, 0, 120, 40, -20, 40};
            for (int i = 0; i < box.length; i += 2) {
                turn(box, i, box[i], box[i + 1], angle);
            }
            Span span = GridMap.span(line);
            Zone zone = GridMap.zone("Z", "cut_ban", box);

            List<Stretch> found = stretches(permits(span, SLIVER_M, TOLERANCE_M, zone));

            assertThat(found).hasSize(1);
            assertThat(found.get(0).lengthM()).isCloseTo(span.lengthM(), within(1e-6));
            piecesWithoutTolerance += permits(span, 0, 0, zone).touches().stream()
                    .mapToInt(touch -> touch.stretches().size())
                    .sum();
        }
        if (noiseM > 0.001) {
            assertThat(piecesWithoutTolerance).isGreaterThan(20 * 5);
        }
    }

    private static void turn(double[] xy, int at, double x, double y, double angle) {
        xy[at] = x * Math.cos(angle) - y * Math.sin(angle);
        xy[at + 1] = x * Math.sin(angle) + y * Math.cos(angle);
    }

    @Test
    void aZoneReachesTheToleranceBeyondItsEdges() {
        assertStretch(
                stretches(permits(straight, 0, 0.5, GridMap.zone("Z", "rail", GridMap.box(40, -10, 60, 10))))
                        .get(0),
                39.5,
                60.5);
    }

    @Test
    void aHoleShrinksByTheTolerance() {
        Zone holed = GridMap.zone("Z", "rail", GridMap.box(20, -10, 80, 10), GridMap.box(40, -5, 60, 5));

        List<Stretch> found = stretches(permits(straight, 0, 0.5, holed));

        assertThat(found).hasSize(2);
        assertStretch(found.get(0), 19.5, 40.5);
        assertStretch(found.get(1), 59.5, 80.5);
    }

    /** 0.3 m beside an edge a disk of 0.5 m about its corner reaches 0.4 m along the line: a triangle of 3, 4 and 5. */
    @Test
    void cornersAreRound() {
        assertStretch(
                stretches(permits(straight, 0, 0.5, GridMap.zone("Z", "rail", GridMap.box(20, 0.3, 70, 30))))
                        .get(0),
                19.6,
                70.4);
    }

    @ParameterizedTest(name = "beside by {0} m: {1}")
    @CsvSource({"0.49, true", "0.4999, true", "0.5001, false", "0.51, false"})
    void aLineBesideAZoneIsInsideUpToTheTolerance(double besideM, boolean inside) {
        Zone beside = GridMap.zone("Z", "rail", GridMap.box(-20, besideM, 120, 30));

        assertThat(permits(straight, 0, 0.5, beside).touches()).hasSize(inside ? 1 : 0);
    }

    @ParameterizedTest(name = "beside by {0} m: {1}")
    @CsvSource({"0.49, 1", "0.51, 0"})
    void aVaultBesideAZoneLiesInItUpToTheTolerance(double besideM, int zones) {
        Zone beside = GridMap.zone("Z", "rail", GridMap.box(50 + besideM, -10, 80, 10));
        PermitAssessor assessor = GridMap.assessor(List.of(beside), GridMap.settings("", false, 0.5, 0.5));

        assertThat(assessor.zonesAt(GridMap.vault("V", 50, 0))).hasSize(zones);
    }

    /** A span that ends within the tolerance of a zone is found, though the extents of both are apart. */
    @Test
    void aZoneIsFoundAcrossATolerance() {
        Zone beyond = GridMap.zone("Z", "rail", GridMap.box(103, -10, 140, 10));

        assertThat(permits(straight, 0, 2.9, beyond).touches()).isEmpty();
        assertThat(only(permits(straight, 0, 4, beyond)).lengthM()).isCloseTo(1, MM);
        assertThat(only(permits(straight, 0, 100, GridMap.zone("Z", "rail", GridMap.box(190, -10, 240, 10))))
                        .atTo())
                .isTrue();
    }

    /** Gaps between stretches: closed below the sliver, kept from there on; the length then counts whole. */
    @ParameterizedTest(name = "gap {0} m, sliver {1} m: {2}")
    @CsvSource({"0.49, 0.5, 1", "0.51, 0.5, 2", "0.49, 0, 2", "1.9, 2, 1"})
    void gapsShorterThanASliverAreClosed(double gapM, double sliverM, int pieces) {
        Zone comb = GridMap.zone("Z", "rail", new double[] {
            20, -10, 40, -10, 40, 8, 40 + gapM, 8, 40 + gapM, -10, 60, -10, 60, 10, 20, 10
        });

        ZoneTouch touch = only(permits(straight, sliverM, 0, comb));

        assertThat(touch.stretches()).hasSize(pieces);
        assertThat(touch.lengthM()).isCloseTo(pieces == 1 ? 40 : 40 - gapM, within(5e-4));
    }

    /** Twenty teeth of 0.3 m with gaps of 0.3 m are one stretch: closed first, then measured. */
    @Test
    void gapsAreClosedBeforeShortStretchesAreLeftOut() {
        var ring = new ArrayList<Double>();
        for (int tooth = 0; tooth < 20; tooth++) {
            double x = 30 + 0.6 * tooth;
            ring.addAll(List.of(x, 10.0, x, -10.0, x + 0.3, -10.0, x + 0.3, 10.0));
        }
        ring.addAll(List.of(60.0, 10.0, 60.0, 20.0, 30.0, 20.0));
        Zone comb = GridMap.zone(
                "Z", "rail", ring.stream().mapToDouble(Double::doubleValue).toArray());

        List<Stretch> found = stretches(permits(straight, SLIVER_M, 0, comb));

        assertThat(found).hasSize(1);
        assertStretch(found.get(0), 30, 30 + 19 * 0.6 + 0.3);
    }

    @Test
    void aStretchShorterThanASliverDoesNotCountAfterThat() {
        Zone thin = GridMap.zone("Z", "rail", GridMap.box(40, -10, 40.2, 10));

        assertThat(permits(straight, 0.5, 0.1, thin).touches()).isEmpty();
        assertThat(only(permits(straight, 0.5, 0.2, thin)).lengthM()).isCloseTo(0.6, MM);
    }

    /** A larger tolerance never takes meters away, on random spans and zones. */
    @Test
    void aLargerToleranceNeverTakesMetersAway() {
        for (int seed = 0; seed < 60; seed++) {
            var random = new Random(seed);
            Span span = GridMap.span(PermitLawsTest.way(random));
            Zone[] zones = PermitLawsTest.zones(random);
            double[] metersByTolerance = Arrays.stream(new double[] {0, 0.01, 0.5, 2, 20})
                    .map(toleranceM -> permits(span, 0, toleranceM, zones).touches().stream()
                            .mapToDouble(ZoneTouch::lengthM)
                            .sum())
                    .toArray();
            for (int i = 1; i < metersByTolerance.length; i++) {
                assertThat(metersByTolerance[i]).isGreaterThanOrEqualTo(metersByTolerance[i - 1] - 1e-6);
            }
        }
    }
}
