package org.spanroom.bore;

import java.util.Optional;

/**
 * Decides whether circles go side by side into a bore: they do and here is how, they do not and this proves it, or neither
 * was found.
 *
 * <p>Plain bounds first, a few starts of the search, then the bound by angles, then the long search. Repeatable: the seed
 * is fixed and each task has a search of its own. Accuracy: an arrangement overlaps by at most
 * {@link PackingTask#VERIFIED_MM}; the least bore given with it is that of its neighbourhood, so the margin is never
 * overstated by more.
 */
final class Packer {
    private static final long SEED = 20_260_101L;
    private static final int QUICK_STARTS = 12;

    private final int effort;

    /** A packer that is quick enough for thousands of cross-sections. */
    Packer() {
        this(20);
    }

    /** A packer that tries so many moves, times the square of the number of circles, before it gives up. */
    Packer(int effort) {
        this.effort = effort;
    }

    Packed pack(PackingTask task) {
        if (task.size() == 0) {
            return Packed.fits(0);
        }
        Optional<Proof> plain = PackingBound.findPlain(task);
        if (plain.isPresent()) {
            return Packed.doesNotFit(plain.get());
        }
        var search = new PackingSearch(task, SEED);
        if (search.tryStarts(QUICK_STARTS)) {
            return fits(task, search);
        }
        Optional<Proof> angles = PackingBound.findByAngles(task);
        if (angles.isPresent()) {
            return Packed.doesNotFit(angles.get());
        }
        if (search.tryMoves(effort * task.size() * task.size())) {
            return fits(task, search);
        }
        return undecided(task, search);
    }

    private static Packed fits(PackingTask task, PackingSearch search) {
        double[] centres = search.best();
        return Packed.fits(2 * Squeeze.of(task).leastHalfMm(centres), centres);
    }

    /** The best arrangement, once more with care: as drawn, and in the bore that it would need. */
    private static Packed undecided(PackingTask task, PackingSearch search) {
        double[] centres = search.best();
        double leastBoreMm = 2 * Squeeze.of(task).grow(centres.clone(), task.halfMm());
        return Packed.undecided(leastBoreMm, centres);
    }
}
