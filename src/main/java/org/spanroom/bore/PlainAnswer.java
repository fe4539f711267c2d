package org.spanroom.bore;

import java.util.Arrays;

/** Answers without a search: by a plain bound, or by laying circles one after another; undecided where neither does. */
final class PlainAnswer {
    /** Laying takes the cube of their number. */
    private static final int MOST_LAID = 150;

    /** Bores that are tried, in shares of the one asked about, for an arrangement to show what is undecided. */
    private static final double[] WIDER_RATIOS = {1, 1.03, 1.1, 1.25, 1.6, 2.2};

    private PlainAnswer() {}

    /** Returns the answer to a task that no plain bound refutes. */
    static Packed of(PackingTask task) {
        for (double ratio : task.size() <= MOST_LAID ? WIDER_RATIOS : new double[0]) {
            PackingTask wider = task.in(ratio * task.boreMm());
            double[] laid = Laying.lay(wider);
            if (laid.length > 0 && wider.isMetBy(laid)) {
                return answer(task, wider.boreMm(), laid);
            }
        }
        double[] inLine = new double[2 * task.size()];
        return answer(task, 2 * PackingSearch.layInLine(task, inLine), inLine);
    }

    /** An arrangement of a wider bore is drawn in to the one asked about, where it overlaps. */
    private static Packed answer(PackingTask task, double leastBoreMm, double[] centers) {
        if (leastBoreMm <= task.boreMm()) {
            return Packed.fits(leastBoreMm, centers);
        }
        double ratio = task.boreMm() / leastBoreMm;
        double[] drawnIn = Arrays.stream(centers).map(each -> each * ratio).toArray();
        return Packed.undecided(leastBoreMm, PackingBound.strongestPlain(task), drawnIn);
    }
}
