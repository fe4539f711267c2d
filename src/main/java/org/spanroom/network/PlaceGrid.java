package org.spanroom.network;

import java.util.Arrays;
import java.util.function.IntConsumer;

/**
 * Finds numbered things near a place or along a step, over the whole globe.
 *
 * <p>Rows of equal height in latitude; each band of one degree has as many columns as make its cells nearly square, so
 * that the grid closes at the antimeridian and narrows to one column at the poles. Cells live in a hash table of linked
 * numbers: adding is constant, asking costs the cells touched. What is visited is in a cell near the place requested or
 * shares its slot by chance: the visitor measures. Something may be visited more than once.
 */
final class PlaceGrid {
    /** A thing over more cells than this is visited always, so that one mistaken outline cannot fill the memory. */
    private static final int MOST_CELLS = 4096;

    /** The least that a degree of latitude measures on WGS 84 (at the equator, 110 574 m), rounded down. */
    private static final double LEAST_M_PER_DEG = 110_500;

    private final int rowsPerDeg;
    private final int[] columns = new int[180];
    private final double[] padDegPerM = new double[180];
    private final int[] heads;
    private final int mask;

    /** Item and next entry by turns. */
    private int[] chain = new int[128];

    private int used;
    private int[] everywhere = {};

    PlaceGrid(double cellM, int expected) {
        rowsPerDeg = (int) Math.max(1, Math.min(20_000, LEAST_M_PER_DEG / cellM));
        for (int band = 0; band < 180; band++) {
            double farLatDeg = band < 90 ? 90 - band : band - 89;
            double mPerDeg = farLatDeg >= 90 ? 0 : GroundStep.eastMPerDeg(farLatDeg);
            columns[band] = (int) Math.max(1, 360 * mPerDeg / cellM);
            padDegPerM[band] = mPerDeg == 0 ? 360 : 1 / mPerDeg;
        }
        mask = Integer.highestOneBit(Math.max(64, 2 * Math.min(expected, 1 << 28))) * 2 - 1;
        heads = new int[mask + 1];
        Arrays.fill(heads, -1);
    }

    /** Adds a thing at a point; things of another kind are not visited when this kind is requested. */
    void add(int item, double lonDeg, double latDeg, int kind) {
        int row = row(latDeg);
        addTo(slot(row, firstColumn(row, lonDeg), kind), item);
    }

    /** Adds a thing of kind 0 that covers a box; the box may pass the antimeridian. */
    void addBox(int item, double westDeg, double southDeg, double eastDeg, double northDeg) {
        long rows = row(northDeg) - (long) row(southDeg) + 1;
        int middleRow = row((southDeg + northDeg) / 2);
        double across = (eastDeg - westDeg) / 360 * columns[middleRow / rowsPerDeg] + 2;
        if (rows * across > MOST_CELLS) {
            everywhere = Arrays.copyOf(everywhere, everywhere.length + 1);
            everywhere[everywhere.length - 1] = item;
            return;
        }
        for (int row = row(southDeg); row <= row(northDeg); row++) {
            int first = firstColumn(row, westDeg);
            for (int i = columnCount(row, westDeg, eastDeg) - 1; i >= 0; i--) {
                addTo(slot(row, wrapped(row, first + i), 0), item);
            }
        }
    }

    /** Visits what may be within a distance of a point. */
    void visitAround(double lonDeg, double latDeg, double radiusM, int kind, IntConsumer visitor) {
        visitStep(lonDeg, latDeg, 0, 0, radiusM, kind, visitor);
    }

    /** Visits what may be within a distance of a step that goes from a point by this many degrees. */
    void visitStep(
            double lonDeg,
            double latDeg,
            double dLonDeg,
            double dLatDeg,
            double radiusM,
            int kind,
            IntConsumer visitor) {
        double padDeg = radiusM / LEAST_M_PER_DEG;
        int firstRow = row(Math.min(latDeg, latDeg + dLatDeg) - padDeg);
        int lastRow = row(Math.max(latDeg, latDeg + dLatDeg) + padDeg);
        for (int row = firstRow; row <= lastRow; row++) {
            double from = 0;
            double to = 1;
            if (lastRow - firstRow > 1 && dLatDeg != 0) {
                double south = (southOf(row) - padDeg - latDeg) / dLatDeg;
                double north = (southOf(row + 1) + padDeg - latDeg) / dLatDeg;
                from = clamp(Math.min(south, north));
                to = clamp(Math.max(south, north));
            }
            double lonA = lonDeg + from * dLonDeg;
            double lonB = lonDeg + to * dLonDeg;
            double pad = padDegPerM[row / rowsPerDeg] * radiusM;
            visitRow(row, Math.min(lonA, lonB) - pad, Math.max(lonA, lonB) + pad, kind, visitor);
        }
        for (int item : everywhere) {
            visitor.accept(item);
        }
    }

    private void visitRow(int row, double westDeg, double eastDeg, int kind, IntConsumer visitor) {
        int first = firstColumn(row, westDeg);
        for (int i = columnCount(row, westDeg, eastDeg) - 1; i >= 0; i--) {
            int slot = slot(row, wrapped(row, first + i), kind);
            for (int entry = heads[slot]; entry >= 0; entry = chain[entry + 1]) {
                visitor.accept(chain[entry]);
            }
        }
    }

    private int firstColumn(int row, double lonDeg) {
        int count = columns[row / rowsPerDeg];
        return wrapped(row, (int) Math.floor((lonDeg + 180) * count / 360));
    }

    private int columnCount(int row, double westDeg, double eastDeg) {
        int count = columns[row / rowsPerDeg];
        double cells = Math.floor((eastDeg + 180) * count / 360) - Math.floor((westDeg + 180) * count / 360) + 1;
        return (int) Math.min(count, cells);
    }

    private int wrapped(int row, int column) {
        int count = columns[row / rowsPerDeg];
        return column >= 0 && column < count ? column : Math.floorMod(column, count);
    }

    private void addTo(int slot, int item) {
        if (used == chain.length) {
            chain = Arrays.copyOf(chain, used * 2);
        }
        chain[used] = item;
        chain[used + 1] = heads[slot];
        heads[slot] = used;
        used += 2;
    }

    private int row(double latDeg) {
        int row = (int) Math.floor((latDeg + 90) * rowsPerDeg);
        return Math.max(0, Math.min(180 * rowsPerDeg - 1, row));
    }

    private double southOf(int row) {
        return (double) row / rowsPerDeg - 90;
    }

    /**
     * Returns the place of a cell in the table. Blocks of four by four cells are spread by multiplication with large odd
     * numbers; the cells of a block are together, so that a route finds its neighborhood in one line of the cache.
     */
    private int slot(int row, int column, int kind) {
        long mixed =
                (row >> 2) * 0x9E3779B97F4A7C15L + (column >> 2) * 0xC2B2AE3D27D4EB4FL + kind * 0x165667B19E3779F9L;
        mixed ^= mixed >>> 29;
        mixed *= 0xBF58476D1CE4E5B9L;
        int block = (int) (mixed >>> 32) << 4;
        return (block | (row & 3) << 2 | (column & 3)) & mask;
    }

    private static double clamp(double share) {
        return Math.max(0, Math.min(1, share));
    }
}
