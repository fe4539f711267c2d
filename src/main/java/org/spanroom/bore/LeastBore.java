package org.spanroom.bore;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.bore.KnownPacking;

/**
 * What is known of the least bore that one set of circles goes into: arrangements in ever narrower bores, and a proof of how wide the
 * bore must be.
 *
 * <p>Both depend on the circles only, never on the bore that is asked about, which only decides how much of the search is looked
 * at. So a wider bore never gets a worse answer, and neither the order of questions nor threads change any. The search
 * ends early for a bore that is far from the narrowest arrangement; a bore that passes where a narrower one did is judged by
 * at least as many moves. Safe for use by several threads.
 */
final class LeastBore {
    private static final long SEED = 20_260_101L;
    private static final int QUICK_STARTS = 12;

    /** Few circles are quickly tried, and a proof about them needs their narrowest arrangement. */
    private static final int STARTS_OF_FEW = 40;

    private static final int FEW = 8;

    /** Tenths of the moves behind the first starts after which a search ends, where the bore would have to be wider by the share beside it. */
    private static final int[] CHECKED_AFTER_TENTHS = {1, 4, 10};

    /** What the first arrangement takes, in moves. */
    private static final int FIRST_MOVES = 5;

    private static final double[] FAR_RATIOS = {0.03, 0.012, 0};

    private final PackingTask task;
    private final int mostMoves;
    private final boolean isCutShort;
    private final LaidBores laid;
    private final List<Found> found = new ArrayList<>();
    private Optional<PackingSearch> search = Optional.empty();
    private Optional<Proof> proof = Optional.empty();
    private final Work proofWork = Work.withoutEnd();
    private int moves;

    /** An arrangement, narrower than all before it, and the number of moves that led to it; 0 for the first start. */
    @SuppressWarnings("ArrayRecordComponent") // never compared, and the array is not changed once found
    private record Found(int move, double leastBoreMm, double[] centers) {}

    /**
     * The least bore of the circles of a task, whatever its bore is.
     *
     * @param usualMoves after this many the search gives up, or after fewer where they would be too much {@link Work}
     */
    LeastBore(PackingTask task, long usualMoves) {
        this.task = task;
        this.laid = new LaidBores(task);
        this.mostMoves = (int) Math.min(usualMoves, Work.MOST_OF_SEARCH / task.moveWork());
        this.isCutShort = mostMoves < usualMoves;
    }

    private static int starts(PackingTask task) {
        return task.size() <= FEW ? STARTS_OF_FEW : QUICK_STARTS;
    }

    /** Returns half a bore that circles go into, from the first starts. */
    static double quickHalfMm(PackingTask task) {
        var search = new PackingSearch(task, SEED);
        search.begin(starts(task));
        for (int move = 1; move < starts(task); move++) {
            search.move();
        }
        return search.leastHalfMm();
    }

    /**
     * Returns whether these circles are soon known to go into the bore of a task. Where they are, {@link #answer} finds an arrangement too.
     *
     * @param work what it takes to find that arrangement is added to, unless it is spent
     */
    boolean isSoonFound(PackingTask asked, Work work) {
        if (!laid.goInto(asked)) {
            return false;
        }
        if (!work.isSpent()) {
            addMoves(0, work);
        }
        return true;
    }

    /** Returns the answer for a task from laying the circles alone; none where that has none. */
    Optional<Packed> laid(PackingTask asked) {
        return laid.narrowest(asked);
    }

    /**
     * Returns the answer for a task of these circles that no plain bound refutes.
     *
     * @param work what the answer takes from the beginning is added to, whatever of it is known already
     */
    synchronized Packed answer(PackingTask asked, Work work) {
        int firstStarts = starts(task) - 1;
        advance(firstStarts, asked);
        Optional<Found> fitting = fitting(asked, firstStarts);
        if (fitting.isPresent()) {
            addMoves(fitting.get().move(), work);
            return fits(fitting.get(), asked);
        }
        Proof needed = proof();
        work.add(proofWork);
        if (needed.leastBoreMm() > asked.boreMm() + 2 * PackingBound.SLACK_MM) {
            addMoves(firstStarts, work);
            return Packed.doesNotFit(needed);
        }
        return searched(asked, needed, work);
    }

    private void addMoves(int most, Work work) {
        work.add((FIRST_MOVES + most) * task.moveWork());
    }

    private Packed searched(PackingTask asked, Proof needed, Work work) {
        for (int check = 0; check < CHECKED_AFTER_TENTHS.length; check++) {
            int most = starts(task) - 1 + (int) ((long) mostMoves * CHECKED_AFTER_TENTHS[check] / 10);
            advance(most, asked);
            Optional<Found> fitting = fitting(asked, most);
            if (fitting.isPresent()) {
                addMoves(fitting.get().move(), work);
                return fits(fitting.get(), asked);
            }
            if (bestBoreMm(most) > asked.boreMm() * (1 + FAR_RATIOS[check])) {
                return undecided(asked, needed, most, work);
            }
        }
        return undecided(asked, needed, starts(task) - 1 + mostMoves, work);
    }

    /** Makes moves up to a number, or until an arrangement meets the task. */
    private void advance(int most, PackingTask asked) {
        if (found.isEmpty()) {
            searcher();
        }
        while (moves < most && fitting(asked, most).isEmpty()) {
            moves++;
            PackingSearch searcher = searcher();
            if (searcher.move()) {
                found.add(new Found(moves, 2 * searcher.leastHalfMm(), searcher.best()));
            }
        }
    }

    /** Returns the search as it is; after what an earlier run remembered it goes the same way again. */
    private PackingSearch searcher() {
        if (search.isEmpty()) {
            var begun = new PackingSearch(task, SEED);
            begun.begin(starts(task));
            if (found.isEmpty()) {
                found.add(new Found(0, 2 * begun.leastHalfMm(), begun.best()));
            }
            for (int move = 1; move < moves; move++) {
                begun.move();
            }
            search = Optional.of(begun);
        }
        return search.get();
    }

    private Optional<Found> fitting(PackingTask asked, int most) {
        return found.stream()
                .filter(one -> one.move() <= most && one.leastBoreMm() <= asked.boreMm() + PackingBound.SLACK_MM)
                .filter(one -> asked.isMetBy(one.centers()))
                .findFirst();
    }

    private double bestBoreMm(int most) {
        return best(most).leastBoreMm();
    }

    private Found best(int most) {
        Found best = found.get(0);
        for (Found one : found) {
            best = one.move() <= most ? one : best;
        }
        return best;
    }

    private static Packed fits(Found fitting, PackingTask asked) {
        return Packed.fits(Math.min(fitting.leastBoreMm(), asked.boreMm()), fitting.centers());
    }

    /** The best arrangement pressed into the bore, for the drawing. */
    private Packed undecided(PackingTask asked, Proof needed, int most, Work work) {
        addMoves(most, work);
        Optional<Packed> laidThere = laid(asked);
        if (laidThere.isPresent()) {
            return laidThere.get();
        }
        if (isCutShort) {
            work.leaveOpen();
        }
        Found best = best(most);
        double[] pressed = best.centers().clone();
        var energy = new OverlapEnergy(asked);
        energy.join(pressed);
        new Descent(energy).descend(pressed, asked.halfMm(), Descent.RESTING);
        return Packed.undecided(best.leastBoreMm(), needed, pressed);
    }

    private Proof proof() {
        if (proof.isEmpty()) {
            proof = Optional.of(PackingBound.strongest(task, bestBoreMm(starts(task) - 1), proofWork));
        }
        return proof.get();
    }

    /** Returns what was searched for, to be remembered by a later run. */
    synchronized KnownPacking known() {
        return new KnownPacking(
                task.shape(),
                task.slackMm(),
                task.diametersMm(),
                task.sleeves(),
                moves,
                found.stream()
                        .filter(one -> Double.isFinite(one.leastBoreMm()))
                        .map(one -> new KnownPacking.Found(one.move(), one.leastBoreMm(), list(one.centers())))
                        .toList());
    }

    /** Takes over what an earlier run found, if every arrangement is one; returns whether it did. */
    synchronized boolean recall(KnownPacking known) {
        if (!found.isEmpty() || known.found().isEmpty() || known.found().get(0).move() != 0) {
            return false;
        }
        for (KnownPacking.Found one : known.found()) {
            if (!task.in(one.leastBoreMm()).isMetBy(array(one.centersMm()))) {
                return false;
            }
        }
        known.found().forEach(one -> found.add(new Found(one.move(), one.leastBoreMm(), array(one.centersMm()))));
        moves = known.moves();
        return true;
    }

    private static List<Double> list(double[] numbers) {
        return Arrays.stream(numbers).boxed().toList();
    }

    private static double[] array(List<Double> list) {
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
