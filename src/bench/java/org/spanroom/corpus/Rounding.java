package org.spanroom.corpus;

import org.spanroom.model.Line;

/** Lines as a format of nine decimals of a degree hands them on. */
final class Rounding {
    /** A billionth of a degree on the meridian of a sphere of 6371 km. */
    private static final double STEP_M = Math.toRadians(1e-9) * 6_371_000;

    private Rounding() {}

    static Line rounded(Line line) {
        double[] xy = new double[2 * line.size()];
        for (int vertex = 0; vertex < line.size(); vertex++) {
            xy[2 * vertex] = STEP_M * Math.rint(line.x(vertex) / STEP_M);
            xy[2 * vertex + 1] = STEP_M * Math.rint(line.y(vertex) / STEP_M);
        }
        return Line.ofXy(xy);
    }
}
