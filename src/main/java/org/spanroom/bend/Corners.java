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

    /** Returns whether the groups from one to the one before another are those of others. */
    boolean hasAt(int from, int to, Corners others) {
        return Arrays.equals(first, from, to, others.first, 0, others.count())
                && Arrays.equals(last, from, to, others.last, 0, others.count());
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

    /** Returns the groups with each made one with those up to another, by its place; its own where it stays as it is. */
    Corners merged(int[] upTo) {
        int[] newFirst = new int[first.length];
        int[] newLast = new int[first.length];
        int count = 0;
        for (int group = 0; group < first.length; group = upTo[group] + 1) {
            newFirst[count] = first[group];
            newLast[count++] = last[upTo[group]];
        }
        return new Corners(Arrays.copyOf(newFirst, count), Arrays.copyOf(newLast, count));
    }

    /** Returns some of the groups, whose places lie in reverse order in a range of an array. */
    Corners picked(int[] reversed, int from, int to) {
        int[] newFirst = new int[to - from];
        int[] newLast = new int[to - from];
        for (int at = 0; at < newFirst.length; at++) {
            newFirst[at] = first[reversed[to - 1 - at]];
            newLast[at] = last[reversed[to - 1 - at]];
        }
        return new Corners(newFirst, newLast);
    }

    /**
     * Returns the first vertex that is looked at to judge a group: where the group before it ends, or nearer.
     *
     * @param reach the most vertices that are looked at to each side
     */
    int windowStart(int group, int reach) {
        int start = group == 0 ? 0 : last[group - 1];
        return Math.max(start, first[group] - reach);
    }

    /**
     * Returns the last vertex that is looked at to judge a group.
     *
     * @param vertices how many the line has
     */
    int windowEnd(int group, int reach, int vertices) {
        int end = group == count() - 1 ? vertices - 1 : first[group + 1];
        return Math.min(end, last[group] + reach);
    }
}
