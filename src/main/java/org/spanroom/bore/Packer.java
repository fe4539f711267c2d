package org.spanroom.bore;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import org.spanroom.model.bore.KnownPacking;
import org.spanroom.model.bore.PackingOutcome;

/**
 * Decides whether circles go side by side into a bore: they do and here is how, they do not and this proves it, or neither
 * was found.
 *
 * <p>Plain bounds first. Then what is known of the {@link LeastBore} of these circles, found once for all bores: its first
 * arrangement answers for most of them. A narrower bore is judged by the proof, then by as much of the search as it takes.
 * Accuracy: an arrangement overlaps, or stretches a sleeve, by at most {@link PackingTask#VERIFIED_MM}; the least bore given with
 * it is that of its neighborhood, so the margin is never overstated by more. Safe for use by several threads.
 */
final class Packer {
    private static final int USUAL_EFFORT = 20;

    /** Names the circles of a task whatever its bore is: the bore that they would fill. */
    private static final double DENSE_RATIO = 0.8;

    private final int effort;
    private final ConcurrentMap<PackingTask, LeastBore> leastBores = new ConcurrentHashMap<>();

    /** A packer that is quick enough for thousands of cross-sections. */
    Packer() {
        this(USUAL_EFFORT);
    }

    /** A packer that tries this many moves, times the square of the number of circles, before it gives up. */
    Packer(int effort) {
        this.effort = effort;
    }

    Packed pack(PackingTask task) {
        return pack(task, Work.withoutEnd());
    }

    /** Returns the answer, without a search once the work is spent; adds the work that the answer takes where it is not yet known. */
    Packed pack(PackingTask task, Work work) {
        if (task.size() == 0) {
            return Packed.fits(0);
        }
        Optional<Proof> plain = PackingBound.findPlain(task);
        if (plain.isPresent()) {
            return Packed.doesNotFit(plain.get());
        }
        if (!work.isSpent()) {
            return leastBore(task).answer(task, work);
        }
        Packed answer = PlainAnswer.of(task);
        return answer.outcome() == PackingOutcome.UNDECIDED ? laidOrOpen(task, answer, work) : answer;
    }

    private Packed laidOrOpen(PackingTask task, Packed undecided, Work work) {
        Optional<Packed> laid = leastBore(task).laid(task);
        if (laid.isEmpty()) {
            work.leaveOpen();
        }
        return laid.orElse(undecided);
    }

    /** Returns the outcome of {@link #pack}, sooner where the bore is not crowded. */
    PackingOutcome outcome(PackingTask task, Work work) {
        return isSoonFit(task, work) ? PackingOutcome.FITS : pack(task, work).outcome();
    }

    /**
     * Returns whether circles are soon known to go in; {@link #pack} finds that they do in any case.
     *
     * @param work what it takes to show how they do is added to; nothing where that is not known soon
     */
    boolean isSoonFit(PackingTask task, Work work) {
        return task.size() == 0 || leastBore(task).isSoonFound(task, work);
    }

    private LeastBore leastBore(PackingTask task) {
        return leastBores.computeIfAbsent(task.filling(DENSE_RATIO), key -> new LeastBore(key, usualMoves(key)));
    }

    private long usualMoves(PackingTask task) {
        return (long) effort * task.size() * task.size();
    }

    /** Returns what was searched for, in a fixed order; what a bound proves is quickly proved again. */
    List<KnownPacking> known() {
        return leastBores.values().stream()
                .map(LeastBore::known)
                .filter(known -> !known.found().isEmpty())
                .sorted(Comparator.comparing(KnownPacking::shape)
                        .thenComparing(known -> known.diametersMm().toString())
                        .thenComparing(known -> known.sleeves().toString())
                        .thenComparingDouble(KnownPacking::slackMm))
                .toList();
    }

    /**
     * Takes over what an earlier packer of the same kind found, each arrangement only after looking at it again.
     *
     * @return how many sets of circles were taken over
     */
    int recall(List<KnownPacking> packings) {
        int taken = 0;
        for (KnownPacking packing : packings) {
            taken += leastBore(circles(packing)).recall(packing) ? 1 : 0;
        }
        return taken;
    }

    private static PackingTask circles(KnownPacking packing) {
        return PackingTask.jointed(
                packing.shape(),
                1,
                packing.diametersMm().stream().mapToDouble(Double::doubleValue).toArray(),
                packing.sleeves().stream().mapToInt(Integer::intValue).toArray(),
                packing.slackMm());
    }
}
