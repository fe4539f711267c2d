package org.spanroom.output.sheet;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.output.explain.Box;

/** Cuts lines at a frame (clipping after Liang and Barsky). */
final class FrameClip {
    private FrameClip() {}

    /** Returns the pieces of a line that are inside; of a point of the line none. */
    static List<List<double[]>> inside(Box frame, List<double[]> line) {
        var pieces = new ArrayList<List<double[]>>();
        var piece = new ArrayList<double[]>();
        for (int i = 1; i < line.size(); i++) {
            double[] from = line.get(i - 1);
            double[] to = line.get(i);
            double[] range = {0, 1};
            boolean isInside = clip(from[0], to[0], frame.leftPx(), frame.rightPx(), range)
                    && clip(from[1], to[1], frame.topPx(), frame.bottomPx(), range);
            if (!isInside) {
                end(piece, pieces);
                continue;
            }
            if (piece.isEmpty() || range[0] > 0) {
                end(piece, pieces);
                piece.add(at(from, to, range[0]));
            }
            piece.add(at(from, to, range[1]));
            if (range[1] < 1) {
                end(piece, pieces);
            }
        }
        end(piece, pieces);
        return pieces;
    }

    private static void end(List<double[]> piece, List<List<double[]>> pieces) {
        if (piece.size() > 1) {
            pieces.add(List.copyOf(piece));
        }
        piece.clear();
    }

    private static double[] at(double[] from, double[] to, double share) {
        return new double[] {from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])};
    }

    private static boolean clip(double from, double to, double least, double most, double[] range) {
        double step = to - from;
        if (step == 0) {
            return from >= least && from <= most;
        }
        double enter = (step > 0 ? least - from : most - from) / step;
        double leave = (step > 0 ? most - from : least - from) / step;
        range[0] = Math.max(range[0], enter);
        range[1] = Math.min(range[1], leave);
        return range[0] <= range[1];
    }
}
