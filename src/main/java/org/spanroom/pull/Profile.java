package org.spanroom.pull;

import java.util.Arrays;
import org.spanroom.model.Line;

/**
 * The grades of a span: the drawn elevations, less what is within the tolerance of a straight grade.
 *
 * <p>Method: the vertex farthest in height from the straight grade between two kept ones is kept too, while it is farther
 * than the tolerance (the Douglas-Peucker scheme, heights instead of distances). A line without elevations is level.
 */
final class Profile {
    private final double[] stationM;
    private final double[] heightM;

    private Profile(double[] stationM, double[] heightM) {
        this.stationM = stationM;
        this.heightM = heightM;
    }

    static Profile of(Line ground, double toleranceM) {
        if (!ground.hasZ()) {
            return new Profile(new double[0], new double[0]);
        }
        int size = ground.size();
        double[] stationM = new double[size];
        double[] heightM = new double[size];
        for (int i = 0; i < size; i++) {
            stationM[i] = i == 0 ? 0 : stationM[i - 1] + ground.stepLength(i - 1);
            heightM[i] = ground.z(i);
        }
        boolean[] kept = new boolean[size];
        kept[0] = true;
        kept[size - 1] = true;
        keepBreaks(stationM, heightM, kept, toleranceM);
        return new Profile(only(kept, stationM), only(kept, heightM));
    }

    boolean isLevel() {
        return stationM.length == 0;
    }

    int size() {
        return stationM.length;
    }

    double stationM(int i) {
        return stationM[i];
    }

    /** Returns the height of the simplified profile; of the nearer end beyond either end, 0 everywhere on level ground. */
    double heightAt(double station) {
        if (isLevel()) {
            return 0;
        }
        int found = Arrays.binarySearch(stationM, station);
        if (found >= 0) {
            return heightM[found];
        }
        int after = -found - 1;
        if (after == 0) {
            return heightM[0];
        }
        if (after == stationM.length) {
            return heightM[after - 1];
        }
        return between(stationM, heightM, new int[] {after - 1, after}, station);
    }

    private static void keepBreaks(double[] stationM, double[] heightM, boolean[] kept, double toleranceM) {
        // A stack of ranges instead of recursion: a line of many thousand vertices may nest as deep.
        int[] stack = new int[2 * stationM.length + 2];
        int top = 0;
        stack[top++] = 0;
        stack[top++] = stationM.length - 1;
        while (top > 0) {
            int last = stack[--top];
            int first = stack[--top];
            int farthest = -1;
            double mostM = toleranceM;
            for (int i = first + 1; i < last; i++) {
                double offM = Math.abs(heightM[i] - between(stationM, heightM, new int[] {first, last}, stationM[i]));
                if (offM > mostM) {
                    mostM = offM;
                    farthest = i;
                }
            }
            if (farthest >= 0) {
                kept[farthest] = true;
                stack[top++] = first;
                stack[top++] = farthest;
                stack[top++] = farthest;
                stack[top++] = last;
            }
        }
    }

    private static double between(double[] stationM, double[] heightM, int[] ends, double station) {
        double spanM = stationM[ends[1]] - stationM[ends[0]];
        double share = spanM > 0 ? (station - stationM[ends[0]]) / spanM : 0;
        return heightM[ends[0]] + share * (heightM[ends[1]] - heightM[ends[0]]);
    }

    private static double[] only(boolean[] kept, double[] values) {
        double[] result = new double[values.length];
        int count = 0;
        for (int i = 0; i < values.length; i++) {
            if (kept[i]) {
                result[count++] = values[i];
            }
        }
        return Arrays.copyOf(result, count);
    }
}
