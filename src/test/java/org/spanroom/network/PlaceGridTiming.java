package org.spanroom.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.IntConsumer;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.ItemVisitor;
import org.locationtech.jts.index.SpatialIndex;
import org.locationtech.jts.index.hprtree.HPRtree;
import org.locationtech.jts.index.kdtree.KdNode;
import org.locationtech.jts.index.kdtree.KdTree;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Prints how long {@link PlaceGrid} takes beside the indexes of JTS for the same: {@code PlaceGridTiming VAULTS}, a million by default.
 * Not a test; run it from the test classes with {@code -Xmx3g}. Decision 009 rests on it.
 *
 * <p>Vaults are at the crossings of a street grid; three steps for each vault, of 45 m along a street, ask for the vaults within a
 * meter. What each index names is measured, as the product does, and the run fails where two find other vaults. JTS is asked in degrees
 * with boxes widened by the meter, and as if no city lay on the antimeridian.
 */
final class PlaceGridTiming {
    private static final double BLOCK_M = 140;
    private static final double STEP_M = 45;
    private static final double RADIUS_M = 1;
    private static final double LON_DEG = -33;
    private static final double LAT_DEG = 38;
    private static final int ROUNDS = 3;

    private final double perLonDeg = GroundStep.eastMPerDeg(LAT_DEG);
    private final double perLatDeg = GroundStep.northMPerDeg(LAT_DEG);
    private final double[] lonDeg;
    private final double[] latDeg;

    /** An index in which everything has been put. */
    private interface Index {
        void visit(double lonDeg, double latDeg, double dLonDeg, double dLatDeg, IntConsumer visitor);
    }

    /** Makes an index of all vaults. */
    private interface Maker {
        Index make();
    }

    private PlaceGridTiming(int count) {
        var random = new Random(1);
        int side = (int) Math.ceil(Math.sqrt(count));
        lonDeg = new double[count];
        latDeg = new double[count];
        for (int i = 0; i < count; i++) {
            int row = i / side;
            lonDeg[i] = LON_DEG + ((i - row * side) * BLOCK_M + random.nextGaussian() * 0.2) / perLonDeg;
            latDeg[i] = LAT_DEG + (row * BLOCK_M + random.nextGaussian() * 0.2) / perLatDeg;
        }
    }

    /** Prints three rounds of each. Argument: number of vaults. */
    public static void main(String[] args) {
        var timing = new PlaceGridTiming(args.length > 0 ? Integer.parseInt(args[0]) : 1_000_000);
        for (int round = 0; round < ROUNDS; round++) {
            long found = timing.time("PlaceGrid", timing::grid);
            timing.check(found, timing.time("HPRtree", () -> timing.tree(new HPRtree())));
            timing.check(found, timing.time("STRtree", () -> timing.tree(new STRtree())));
            timing.check(found, timing.time("KdTree", timing::kdTree));
        }
    }

    private void check(long expected, long found) {
        if (expected != found) {
            throw new IllegalStateException("other vaults were found");
        }
    }

    private long time(String who, Maker maker) {
        long start = System.nanoTime();
        Index index = maker.make();
        index.visit(LON_DEG, LAT_DEG, 0, 0, item -> {});
        long ready = System.nanoTime();
        long found = ask(index);
        System.out.printf(
                Locale.ROOT,
                "%-9s made in %.3f s, asked in %.3f s, %.3f us a step; sum of what it found %d%n",
                who,
                (ready - start) / 1e9,
                (System.nanoTime() - ready) / 1e9,
                (System.nanoTime() - ready) / 1e3 / (3.0 * lonDeg.length),
                found);
        return found;
    }

    /** Asks along the street east of each vault, and returns a sum of what is within the radius of each step's line. */
    private long ask(Index index) {
        long[] found = {0};
        double dLon = STEP_M / perLonDeg;
        for (int vault = 0; vault < lonDeg.length; vault++) {
            for (int step = 0; step < 3; step++) {
                double fromLon = lonDeg[vault] + step * dLon;
                double fromLat = latDeg[vault];
                int number = 3 * vault + step;
                index.visit(fromLon, fromLat, dLon, 0, item -> {
                    double alongM = Math.max(0, Math.min(STEP_M, (lonDeg[item] - fromLon) * perLonDeg));
                    double eastM = (lonDeg[item] - fromLon) * perLonDeg - alongM;
                    double northM = (latDeg[item] - fromLat) * perLatDeg;
                    if (eastM * eastM + northM * northM <= RADIUS_M * RADIUS_M) {
                        found[0] += item * 31L + number;
                    }
                });
            }
        }
        return found[0];
    }

    private Index grid() {
        var grid = new PlaceGrid(100, lonDeg.length);
        for (int i = 0; i < lonDeg.length; i++) {
            grid.add(i, lonDeg[i], latDeg[i], 0);
        }
        return (lon, lat, dLon, dLat, visitor) -> grid.visitStep(lon, lat, dLon, dLat, RADIUS_M, 0, visitor);
    }

    private Index tree(SpatialIndex tree) {
        for (int i = 0; i < lonDeg.length; i++) {
            tree.insert(new Envelope(lonDeg[i], lonDeg[i], latDeg[i], latDeg[i]), i);
        }
        return (lon, lat, dLon, dLat, visitor) -> {
            ItemVisitor unboxed = item -> visitor.accept((Integer) item);
            tree.query(box(lon, lat, dLon, dLat), unboxed);
        };
    }

    private Index kdTree() {
        var tree = new KdTree();
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < lonDeg.length; i++) {
            order.add(i);
        }
        // In the order of the file this tree would be a list; shuffled, it is nearly balanced.
        java.util.Collections.shuffle(order, new Random(2));
        for (int i : order) {
            tree.insert(new Coordinate(lonDeg[i], latDeg[i]), i);
        }
        return (lon, lat, dLon, dLat, visitor) ->
                tree.query(box(lon, lat, dLon, dLat), (KdNode node) -> visitor.accept((Integer) node.getData()));
    }

    private Envelope box(double lon, double lat, double dLon, double dLat) {
        var box = new Envelope(lon, lon + dLon, lat, lat + dLat);
        box.expandBy(RADIUS_M * 1.001 / perLonDeg, RADIUS_M * 1.001 / perLatDeg);
        return box;
    }
}
