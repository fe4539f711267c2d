package org.spanroom.bend;

import java.util.Arrays;

/** Groups of neighboring corners, each treated as one bend: the first and last vertex of each, in order along the line. */
final class Corners {
    static final Corners NONE = new Corners(new int[0], new int[0]);

    final int[] first;
    final int[] last;

    Corners(int[] first, int[] last) {
        this.first = first;
        this.last = last;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Corners that && Arrays.equals(first, that.first) && Arrays.equals(last, that.last);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(first) + Arrays.hashCode(last);
    }

    int count() {
        return first.length;
    }

    Corners slice(int from, int to) {
        return new Corners(Arrays.copyOfRange(first, from, to), Arrays.copyOfRange(last, from, to));
    }

    /** Returns the groups with those from one to another, both included, made one. */
    Corners merged(int from, int to) {
        int count = first.length - (to - from);
        int[] newFirst = new int[count];
        int[] newLast = new int[count];
        for (int old = 0, at = 0; at < count; at++, old++) {
            newFirst[at] = first[old];
            if (old == from) {
                old = to;
            }
            newLast[at] = last[old];
        }
        return new Corners(newFirst, newLast);
    }

    Corners without(int group) {
        int[] newFirst = new int[first.length - 1];
        int[] newLast = new int[first.length - 1];
        for (int old = 0, at = 0; old < first.length; old++) {
            if (old != group) {
                newFirst[at] = first[old];
                newLast[at++] = last[old];
            }
        }
        return new Corners(newFirst, newLast);
    }
}
