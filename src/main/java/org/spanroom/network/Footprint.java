package org.spanroom.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.spanroom.model.Line;
import org.spanroom.model.network.Vault;

/** The outline of a vault in meters east and north of the vault's place, one closed ring for each part. */
final class Footprint {
    /** From so many walls on, those near a step are looked up; for fewer, trying all is as fast. */
    private static final int LEAST_INDEXED_WALLS = 64;

    private static final double TIE_M = 1e-9;
    private static final double LEAST_SHARE = 1e-12;

    private final double[][] rings;
    private final WallIndex[] walls;
    private final double[] box = {
        Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY
    };

    /** What a step does at the outline; places are shares of the step, 0 to 1. */
    interface Meeting {
        /** The step is within tolerance of one wall from {@code from} to {@code to}. */
        void beside(double from, double to, double nearFrom, double nearTo, double distanceM);

        /** The step is inside from {@code from} to {@code to}. */
        void inside(double from, double to);

        /** The step comes as near as this to one wall, which is beyond the tolerance. */
        void misses(double distanceM);
    }

    Footprint(Vault vault, double eastMPerDeg, double northMPerDeg) {
        List<double[]> parts = new ArrayList<>();
        for (Line line : vault.footprint()) {
            double[] ring = new double[2 * line.size()];
            for (int vertex = 0; vertex < line.size(); vertex++) {
                ring[2 * vertex] = GroundStep.differenceDeg(vault.lonDeg(), line.x(vertex)) * eastMPerDeg;
                ring[2 * vertex + 1] = (line.y(vertex) - vault.latDeg()) * northMPerDeg;
                box[0] = Math.min(box[0], ring[2 * vertex]);
                box[1] = Math.min(box[1], ring[2 * vertex + 1]);
                box[2] = Math.max(box[2], ring[2 * vertex]);
                box[3] = Math.max(box[3], ring[2 * vertex + 1]);
            }
            parts.add(closed(ring));
        }
        rings = parts.toArray(double[][]::new);
        walls = parts.stream()
                .map(ring -> ring.length / 2 > LEAST_INDEXED_WALLS ? WallIndex.of(ring) : WallIndex.all(ring))
                .toArray(WallIndex[]::new);
    }

    private static double[] closed(double[] ring) {
        int last = ring.length - 2;
        if (ring[0] == ring[last] && ring[1] == ring[last + 1]) {
            return ring;
        }
        double[] closed = Arrays.copyOf(ring, ring.length + 2);
        closed[last + 2] = ring[0];
        closed[last + 3] = ring[1];
        return closed;
    }

    /** Returns west, south, east, north in meters. */
    double[] box() {
        return box.clone();
    }

    /** Returns the distance from a point to the footprint; 0 inside. */
    double distanceM(double x, double y) {
        double least = Double.POSITIVE_INFINITY;
        for (WallIndex ring : walls) {
            if (ring.contains(x, y)) {
                return 0;
            }
            least = Math.min(least, ring.distanceM(x, y));
        }
        return least;
    }

    /** Returns how the step from a to b meets the footprint. */
    void meet(double ax, double ay, double bx, double by, double toleranceM, double radiusM, Meeting meeting) {
        if (Math.max(ax, bx) < box[0] - radiusM
                || Math.min(ax, bx) > box[2] + radiusM
                || Math.max(ay, by) < box[1] - radiusM
                || Math.min(ay, by) > box[3] + radiusM) {
            return;
        }
        var step = new WallStep(ax, ay, bx, by);
        for (int part = 0; part < rings.length; part++) {
            double[] ring = rings[part];
            int[] near = walls[part].near(
                    Math.min(ax, bx) - radiusM,
                    Math.min(ay, by) - radiusM,
                    Math.max(ax, bx) + radiusM,
                    Math.max(ay, by) + radiusM);
            double[] crossings = new double[near.length + 2];
            int count = 0;
            for (int i : near) {
                step.against(ring, i, toleranceM, TIE_M);
                step.report(toleranceM, meeting);
                if (step.crosses()) {
                    crossings[count++] = step.crossing();
                }
            }
            crossings[count++] = 0;
            crossings[count++] = 1;
            Arrays.sort(crossings, 0, count);
            for (int i = 0; i + 1 < count; i++) {
                double middle = (crossings[i] + crossings[i + 1]) / 2;
                if (crossings[i + 1] - crossings[i] > LEAST_SHARE
                        && walls[part].contains(ax + middle * (bx - ax), ay + middle * (by - ay))) {
                    meeting.inside(crossings[i], crossings[i + 1]);
                }
            }
        }
    }
}
