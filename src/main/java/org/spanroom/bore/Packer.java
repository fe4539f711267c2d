package org.spanroom.bore;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.spanroom.model.bore.KnownPacking;
import org.spanroom.model.bore.PackingOutcome;

/**
 * Decides whether circles go side by side into a bore: they do and here is how, they do not and this proves it, or neither
 * was found.
 *
 * <p>Plain bounds first. Then the narrow arrangement of these circles, which is found once and answers for every bore that
 * is wide enough for it; most ducts are. Where the bore is narrower: a few starts of the search in that very bore, the
 * bound by angles, the long search. Repeatable: the seed is fixed and each search has its own, so that an answer depends on
 * the sizes only, whichever thread asks first. Accuracy: an arrangement overlaps by at most
 * {@link PackingTask#VERIFIED_MM}; the least bore given with it is that of its neighbourhood, so the margin is never
 * overstated by more. Safe for use by several threads.
 */
final class Packer {
    private static final long SEED = 20_260_101L;
    private static final int QUICK_STARTS = 12;
    private static final int USUAL_EFFORT = 20;

    /** Few sets of circles fill more of a bore than this, so that a start in such a bore comes out near to its least. */
    private static final double DENSE_RATIO = 0.8;

    private final int effort;
    private final ConcurrentMap<PackingTask, Packed> narrowest = new ConcurrentHashMap<>();
    private final ConcurrentMap<PackingTask, Packed> decided = new ConcurrentHashMap<>();

    /** A packer that is quick enough for thousands of cross-sections. */
    Packer() {
        this(USUAL_EFFORT);
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
        Packed narrow = narrow(task);
        if (task.overlapMm(narrow.centresMm()) <= PackingTask.VERIFIED_MM) {
            return Packed.fits(Math.min(narrow.leastBoreMm(), task.boreMm()), narrow.centresMm());
        }
        Packed known = decided.get(task);
        return known != null ? known : keep(decided, task, decide(task, narrow));
    }

    /** Returns a narrow arrangement of the circles of a task, whatever its bore, with the bore that it needs. */
    private Packed narrow(PackingTask task) {
        PackingTask dense = task.filling(DENSE_RATIO);
        Packed known = narrowest.get(dense);
        return known != null ? known : keep(narrowest, dense, squeezed(dense));
    }

    private static Packed squeezed(PackingTask dense) {
        var search = new PackingSearch(dense, SEED);
        boolean clear = search.tryStarts(QUICK_STARTS);
        double[] centres = search.best();
        var squeeze = Squeeze.of(dense);
        double leastHalfMm = clear ? squeeze.narrow(centres) : squeeze.grow(centres, dense.halfMm());
        return Packed.fits(2 * leastHalfMm, centres);
    }

    private Packed decide(PackingTask task, Packed narrow) {
        var search = new PackingSearch(task, SEED);
        if (search.tryFrom(narrow.centresMm()) || search.tryStarts(QUICK_STARTS)) {
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

    /** Returns what was searched for, in a fixed order; what a bound proves is quickly proved again. */
    List<KnownPacking> known() {
        return Stream.concat(narrowest.entrySet().stream(), decided.entrySet().stream())
                .filter(entry -> entry.getValue().outcome() != PackingOutcome.DOES_NOT_FIT)
                .map(entry -> known(entry.getKey(), entry.getValue()))
                .sorted(Comparator.comparing(KnownPacking::shape)
                        .thenComparing(known -> known.diametersMm().toString())
                        .thenComparingDouble(KnownPacking::boreMm))
                .toList();
    }

    /**
     * Takes over what an earlier packer of the same kind found, each arrangement only after looking at it again.
     *
     * @return how many were taken over
     */
    int recall(List<KnownPacking> packings) {
        int taken = 0;
        for (KnownPacking packing : packings) {
            taken += recall(packing) ? 1 : 0;
        }
        return taken;
    }

    private boolean recall(KnownPacking packing) {
        double[] diametersMm = array(packing.diametersMm());
        PackingTask task = PackingTask.of(packing.shape(), packing.boreMm(), diametersMm);
        double[] centres = array(packing.centresMm());
        if (packing.outcome() == PackingOutcome.UNDECIDED) {
            if (task.overlapMm(centres) <= PackingTask.VERIFIED_MM || packing.leastBoreMm() <= task.boreMm()) {
                return false;
            }
            decided.putIfAbsent(task, Packed.undecided(packing.leastBoreMm(), centres));
            return true;
        }
        PackingTask least = task.in(packing.leastBoreMm());
        if (packing.outcome() != PackingOutcome.FITS || least.overlapMm(centres) > PackingTask.VERIFIED_MM) {
            return false;
        }
        boolean isNarrow = task.filling(DENSE_RATIO).equals(task);
        (isNarrow ? narrowest : decided).putIfAbsent(task, Packed.fits(packing.leastBoreMm(), centres));
        return true;
    }

    private static KnownPacking known(PackingTask task, Packed packed) {
        List<Double> diametersMm = IntStream.range(0, task.size())
                .mapToObj(i -> 2 * task.radiusMm(i))
                .toList();
        List<Double> centresMm = Arrays.stream(packed.centresMm()).boxed().toList();
        return new KnownPacking(
                task.shape(), task.boreMm(), diametersMm, packed.outcome(), packed.leastBoreMm(), centresMm);
    }

    private static double[] array(List<Double> list) {
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** A second thread has calculated the same answer. */
    private static Packed keep(ConcurrentMap<PackingTask, Packed> known, PackingTask task, Packed packed) {
        Packed first = known.putIfAbsent(task, packed);
        return first == null ? packed : first;
    }

    private static Packed fits(PackingTask task, PackingSearch search) {
        double[] centres = search.best();
        return Packed.fits(2 * Squeeze.of(task).narrow(centres), centres);
    }

    /** The best arrangement, once more with care: as drawn, and in the bore that it would need. */
    private static Packed undecided(PackingTask task, PackingSearch search) {
        double[] centres = search.best();
        double leastBoreMm = 2 * Squeeze.of(task).grow(centres.clone(), task.halfMm());
        return Packed.undecided(leastBoreMm, centres);
    }
}
