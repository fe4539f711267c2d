package org.spanroom.network;

import java.util.Arrays;
import org.spanroom.model.Line;

/**
 * The line of one span while it is put together.
 *
 * <p>Where two pieces meet, their end vertices become one: as drawn if they coincide to a millimeter, else the point midway,
 * which is right within half the gap whether the pieces leave one or overlap. The span's drawn length stays the sum of the
 * pieces; the line's own length may differ from it by the gap.
 */
final class SpanLine {
    private static final double SAME_POINT_M = 1e-3;

    private final GroundStep step;
    private double[] lonDeg = new double[16];
    private double[] latDeg = new double[16];
    private double[] zM = new double[16];
    private int size;
    private boolean hasZ;
    private boolean joins;

    SpanLine(GroundStep step) {
        this.step = step;
    }

    /** Forgets the last span's line. */
    void clear() {
        size = 0;
        hasZ = true;
        joins = false;
    }

    /** Says that the vertices to come are a next piece's. */
    void begin(boolean pieceHasZ) {
        hasZ &= pieceHasZ;
        joins = size > 0;
    }

    void add(double lon, double lat, double z) {
        if (joins) {
            joins = false;
            meet(lon, lat, z);
            return;
        }
        if (size == lonDeg.length) {
            lonDeg = Arrays.copyOf(lonDeg, 2 * size);
            latDeg = Arrays.copyOf(latDeg, 2 * size);
            zM = Arrays.copyOf(zM, 2 * size);
        }
        lonDeg[size] = lon;
        latDeg[size] = lat;
        zM[size] = z;
        size++;
    }

    private void meet(double lon, double lat, double z) {
        int last = size - 1;
        if (step.measure(lonDeg[last], latDeg[last], lon, lat) > SAME_POINT_M) {
            lonDeg[last] += GroundStep.differenceDeg(lonDeg[last], lon) / 2;
            latDeg[last] = (latDeg[last] + lat) / 2;
            zM[last] = (zM[last] + z) / 2;
        }
    }

    int size() {
        return size;
    }

    /** Returns an end's longitude, latitude, height where there are any; 0 else. */
    double ordinate(boolean last, int axis) {
        double[] ordinates = axis == 0 ? lonDeg : axis == 1 ? latDeg : zM;
        return ordinates[last ? size - 1 : 0];
    }

    double firstLonDeg() {
        return lonDeg[0];
    }

    double firstLatDeg() {
        return latDeg[0];
    }

    double lastLonDeg() {
        return lonDeg[size - 1];
    }

    double lastLatDeg() {
        return latDeg[size - 1];
    }

    /** Returns whether a line has the very same vertices. */
    boolean isDrawnAs(Line other) {
        if (other.size() != size || other.hasZ() != hasZ) {
            return false;
        }
        for (int vertex = 0; vertex < size; vertex++) {
            if (lonDeg[vertex] != other.x(vertex)
                    || latDeg[vertex] != other.y(vertex)
                    || (hasZ && zM[vertex] != other.z(vertex))) {
                return false;
            }
        }
        return true;
    }

    /** Returns a number that lines drawn the same have in common. */
    int hash() {
        long bits = 31 * Double.doubleToRawLongBits(firstLonDeg() + 0.0)
                + 17 * Double.doubleToRawLongBits(lastLatDeg() + 0.0)
                + 13 * Double.doubleToRawLongBits(latDeg[size / 2] + 0.0)
                + size;
        bits *= 0x9E3779B97F4A7C15L;
        return (int) (bits >>> 40);
    }

    Line lonLat() {
        double[] packed = new double[size * (hasZ ? 3 : 2)];
        int at = 0;
        for (int vertex = 0; vertex < size; vertex++) {
            packed[at++] = lonDeg[vertex];
            packed[at++] = latDeg[vertex];
            if (hasZ) {
                packed[at++] = zM[vertex];
            }
        }
        return Line.wrap(packed, hasZ);
    }

    /**
     * Returns the first of the vertices of a route's line that this line has between its ends, all of them in a row; -1 where it is no
     * such stretch.
     *
     * @param from the vertex to look at first; the search goes on from there and, from the end, to the beginning
     * @param most how many vertices to look at
     */
    int firstBetween(Line route, int from, int most) {
        int between = size - 2;
        if (route.hasZ() != hasZ) {
            return -1;
        }
        int vertices = route.size();
        int vertex = Math.min(from, vertices);
        for (int looked = 0; looked < Math.min(most, vertices + 1); looked++) {
            if (vertex + between <= vertices && isStretch(route, vertex, between)) {
                return vertex;
            }
            vertex = vertex == vertices ? 0 : vertex + 1;
        }
        return -1;
    }

    private boolean isStretch(Line route, int vertex, int between) {
        for (int i = 0; i < between; i++) {
            if (lonDeg[i + 1] != route.x(vertex + i)
                    || latDeg[i + 1] != route.y(vertex + i)
                    || (hasZ && zM[i + 1] != route.z(vertex + i))) {
                return false;
            }
        }
        return true;
    }
}
