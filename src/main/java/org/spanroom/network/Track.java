package org.spanroom.network;

import org.spanroom.model.Line;

/**
 * A drawn line ready to be measured along: its vertices, each once, and the ground length from the first to each.
 *
 * <p>A vertex within a micrometer of the one before it is left out. A place on the track is the length from the first
 * vertex to it. Within a step the line is straight in longitude and latitude; since a degree of longitude shrinks towards the
 * pole, length does not go quite evenly with them, and {@link GroundStep#skewRatio} says how it goes.
 */
final class Track {
    private static final double SAME_VERTEX_M = 1e-6;
    private static final double[] NO_ELEVATIONS = {};

    /** A track of no vertices. */
    static final Track NONE = new Track(NO_ELEVATIONS, NO_ELEVATIONS, NO_ELEVATIONS, NO_ELEVATIONS, 0, -1);

    private final double[] lonDeg;
    private final double[] latDeg;
    private final double[] zM;
    private final double[] alongM;
    private final int size;
    private final int firstLeftOut;

    private Track(double[] lonDeg, double[] latDeg, double[] zM, double[] alongM, int size, int firstLeftOut) {
        this.lonDeg = lonDeg;
        this.latDeg = latDeg;
        this.zM = zM;
        this.alongM = alongM;
        this.size = size;
        this.firstLeftOut = firstLeftOut;
    }

    static Track of(Line line, GroundStep step) {
        int count = line.size();
        double[] lon = new double[count];
        double[] lat = new double[count];
        double[] z = line.hasZ() ? new double[count] : NO_ELEVATIONS;
        double[] along = new double[count];
        int size = 0;
        int firstLeftOut = -1;
        for (int vertex = 0; vertex < count; vertex++) {
            double lengthM = 0;
            if (size > 0) {
                lengthM = step.measure(lon[size - 1], lat[size - 1], line.x(vertex), line.y(vertex));
                if (lengthM <= SAME_VERTEX_M) {
                    firstLeftOut = firstLeftOut < 0 ? vertex : firstLeftOut;
                    continue;
                }
            }
            lon[size] = line.x(vertex);
            lat[size] = line.y(vertex);
            along[size] = size == 0 ? 0 : along[size - 1] + lengthM;
            if (line.hasZ()) {
                z[size] = line.z(vertex);
            }
            size++;
        }
        return new Track(lon, lat, z, along, size, firstLeftOut);
    }

    /** Returns the number of vertices kept; 1 for a line without length. */
    int size() {
        return size;
    }

    /** Returns the first vertex of the drawn line that was left out, or -1. */
    int firstLeftOut() {
        return firstLeftOut;
    }

    double lonDeg(int vertex) {
        return lonDeg[vertex];
    }

    double latDeg(int vertex) {
        return latDeg[vertex];
    }

    double alongM(int vertex) {
        return alongM[vertex];
    }

    double lengthM() {
        return alongM[size - 1];
    }

    boolean hasZ() {
        return zM.length > 0;
    }

    /** Adds the vertices between two places to a span's line, the places themselves included. */
    void copy(double fromM, double toM, SpanLine target) {
        addPlace(fromM, target);
        int first = firstAfter(fromM + SAME_VERTEX_M);
        for (int vertex = first; vertex < size && alongM[vertex] < toM - SAME_VERTEX_M; vertex++) {
            target.add(lonDeg[vertex], latDeg[vertex], elevation(vertex));
        }
        addPlace(toM, target);
    }

    /** Returns the same from the far place back to the near one. */
    void copyBack(double fromM, double toM, SpanLine target) {
        addPlace(toM, target);
        int last = firstAfter(toM - SAME_VERTEX_M) - 1;
        for (int vertex = last; vertex >= 0 && alongM[vertex] > fromM + SAME_VERTEX_M; vertex--) {
            target.add(lonDeg[vertex], latDeg[vertex], elevation(vertex));
        }
        addPlace(fromM, target);
    }

    private void addPlace(double placeM, SpanLine target) {
        int step = stepAt(placeM);
        double share = shareAt(step, placeM);
        double z = hasZ() ? zM[step] + share * (zM[step + 1] - zM[step]) : 0;
        target.add(lonAt(step, share), latAt(step, share), z);
    }

    double lonAt(double placeM) {
        int step = stepAt(placeM);
        return lonAt(step, shareAt(step, placeM));
    }

    double latAt(double placeM) {
        int step = stepAt(placeM);
        return latAt(step, shareAt(step, placeM));
    }

    private double lonAt(int step, double share) {
        return share == 0 ? lonDeg[step] : share == 1 ? lonDeg[step + 1] : lonBetween(step, share);
    }

    private double latAt(int step, double share) {
        return share == 1 ? latDeg[step + 1] : latDeg[step] + share * (latDeg[step + 1] - latDeg[step]);
    }

    private double lonBetween(int step, double share) {
        double lon = lonDeg[step] + share * GroundStep.differenceDeg(lonDeg[step], lonDeg[step + 1]);
        boolean wrapped = Math.abs(lonDeg[step + 1] - lonDeg[step]) > 180;
        return wrapped && Math.abs(lon) > 180 ? lon - Math.copySign(360, lon) : lon;
    }

    private double elevation(int vertex) {
        return hasZ() ? zM[vertex] : 0;
    }

    /** Returns the place at a share of a step's degrees, given the step's skew. */
    double placeM(int step, double share, double skewRatio) {
        if (share == 0 || share == 1) {
            return alongM[share == 0 ? step : step + 1];
        }
        double even = (alongM[step + 1] - alongM[step]) * share;
        return alongM[step] + even * (1 + skewRatio / 2 * (1 - share));
    }

    /** Solves {@link #placeM} for the share. */
    private double shareAt(int step, double placeM) {
        double even = (placeM - alongM[step]) / (alongM[step + 1] - alongM[step]);
        if (even <= 0 || even >= 1) {
            return even <= 0 ? 0 : 1;
        }
        double skew = skewRatio(step);
        double b = 1 + skew / 2;
        return 2 * even / (b + Math.sqrt(b * b - 2 * skew * even));
    }

    double skewRatio(int step) {
        return GroundStep.skewRatio(lonDeg[step], latDeg[step], lonDeg[step + 1], latDeg[step + 1]);
    }

    private int stepAt(double placeM) {
        return Math.max(0, Math.min(size - 2, firstAfter(placeM) - 1));
    }

    private int firstAfter(double placeM) {
        int low = 0;
        int high = size;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (alongM[middle] > placeM) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }
}
