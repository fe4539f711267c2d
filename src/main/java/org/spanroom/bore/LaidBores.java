package org.spanroom.bore;

import java.util.Arrays;
import java.util.Optional;

/**
 * Bores that one set of circles goes into since {@link Laying} lays it there: soon known, and enough for bores that are not crowded.
 *
 * <p>Which bores are tried follows from the circles only, and an arrangement of one is an arrangement of every wider one. So a wider bore
 * never gets a worse answer, and neither the order of questions nor threads change any. Safe for use by several threads.
 */
final class LaidBores {
    /** Laying takes the cube of their number. */
    private static final int MOST_LAID = 150;

    /**
     * Shares of the bores tried that circles fill, in the order in which they are tried. The first lets most sets be laid and answers for
     * most bores; wider ones for circles that it leaves over; narrower ones for narrower bores.
     */
    private static final double[] FILL_RATIOS = {0.5, 0.4, 0.3, 0.2, 0.1, 0.55, 0.6, 0.65, 0.7, 0.75};

    /** The least bore of one or two circles is known; numbers are rounded, so it is tried a little wider. */
    private static final double A_LITTLE_WIDER = 1 + 1e-9;

    private enum Tried {
        NOT_YET,
        LAID,
        LEFT_OVER
    }

    private final PackingTask[] bores;
    private final Tried[] tried;

    /** The bores of the circles of a task, whatever its bore is. */
    LaidBores(PackingTask task) {
        bores = bores(task);
        tried = new Tried[bores.length];
        Arrays.fill(tried, Tried.NOT_YET);
    }

    private static PackingTask[] bores(PackingTask task) {
        if (task.size() > MOST_LAID) {
            return new PackingTask[0];
        }
        if (task.size() <= 2) {
            double leastMm = Math.max(2 * task.radiusMm(0), PackingBound.pairBoreMm(task));
            return new PackingTask[] {task.in(leastMm * A_LITTLE_WIDER)};
        }
        var bores = new PackingTask[FILL_RATIOS.length];
        for (int k = 0; k < bores.length; k++) {
            bores[k] = task.filling(FILL_RATIOS[k]);
        }
        return bores;
    }

    /** Returns whether the circles were laid into a bore that is no wider than the one of a task. */
    synchronized boolean goInto(PackingTask asked) {
        for (int k = 0; k < bores.length; k++) {
            if (bores[k].boreMm() <= asked.boreMm() && isLaid(k)) {
                return true;
            }
        }
        return false;
    }

    private boolean isLaid(int k) {
        if (tried[k] == Tried.NOT_YET) {
            tried[k] = isMet(k, Laying.layCellsAbove(bores[k])) ? Tried.LAID : Tried.LEFT_OVER;
        }
        return tried[k] == Tried.LAID;
    }

    private boolean isMet(int k, double[] laid) {
        return laid.length > 0 && bores[k].isMetBy(laid);
    }

    /** Returns the arrangement of the narrowest bore that the circles are laid into, as the answer for a task; none where that is wider. */
    synchronized Optional<Packed> narrowest(PackingTask asked) {
        int narrowest = -1;
        for (int k = 0; k < bores.length; k++) {
            boolean narrower = narrowest < 0 || bores[k].boreMm() < bores[narrowest].boreMm();
            if (bores[k].boreMm() <= asked.boreMm() && narrower && isLaid(k)) {
                narrowest = k;
            }
        }
        return narrowest < 0
                ? Optional.empty()
                : Optional.of(Packed.fits(bores[narrowest].boreMm(), Laying.layCellsAbove(bores[narrowest])));
    }
}
