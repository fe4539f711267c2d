package org.spanroom.bore;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Proofs that circles do not go into a bore, the plain ones first.
 *
 * <p>Every bound is valid for circles that may overlap by {@link PackingTask#VERIFIED_MM}, so that no arrangement is treated as
 * both found and refuted. Each speaks of the largest 1, 2, ... circles: where they do not go in, more do not.
 */
final class PackingBound {
    static final double SLACK_MM = 2 * PackingTask.VERIFIED_MM;

    /** Bores that are tried by cases are shorter by these shares than one that the circles are known to go into. */
    private static final double[] SHORT_RATIOS = {1e-5, 1e-4, 1e-3, 0.003, 0.006, 0.01, 0.02, 0.03};

    private static final int MOST_WORK = 600_000;

    /** What a proof takes before cases of distances, in units of {@link Work}, and how many circles are set into orders in one. */
    private static final int USUAL_WORK = 15_000;

    private static final int PLACED_IN_A_UNIT = 20;

    private PackingBound() {}

    /** Finds a proof by widths, areas, and equal circles as small as the smallest of a group; takes microseconds. */
    static Optional<Proof> findPlain(PackingTask task) {
        return refuted(task, () -> "width of the largest, " + mm(2 * task.radiusMm(0)), 2 * task.radiusMm(0))
                .or(() -> refuted(task, () -> "width of the two largest side by side", pairBoreMm(task)))
                .or(() -> refuted(task, () -> "area of all " + task.size(), areaBoreMm(task)))
                .or(() -> findEqual(task));
    }

    /**
     * Returns the proof that demands the widest bore, whatever bore the circles are to go into: plain, by the angles that circles around
     * the middle of a round bore take up, or by cases of their distances from it.
     *
     * @param knownMm a bore that the circles are known to go into
     * @param work what it takes is added to
     */
    static Proof strongest(PackingTask task, double knownMm, Work work) {
        Proof strongest = strongestPlain(task);
        if (task.isSquare()) {
            return strongest;
        }
        work.add(USUAL_WORK);
        double[] knownHalfMm = knownHalfMm(task, knownMm);
        for (int count = 3; count <= Math.min(task.size(), RingBound.MOST_CIRCLES); count++) {
            strongest = byAngles(task, count, knownHalfMm[count], strongest);
        }
        for (int count = 3; count <= Math.min(task.size(), DistanceBound.MOST_CIRCLES); count++) {
            strongest = byDistances(task, count, knownHalfMm[count], strongest, work);
        }
        return strongest;
    }

    /** Half the bores that the largest 3, 4, ... circles are known to go into: no proof about them demands more. */
    private static double[] knownHalfMm(PackingTask task, double knownMm) {
        double[] known = new double[Math.min(task.size(), RingBound.MOST_CIRCLES) + 1];
        for (int count = 3; count < known.length; count++) {
            boolean asked = count == task.size() && !task.hasSleeves();
            known[count] = asked ? knownMm / 2 : Math.min(knownMm / 2, LeastBore.quickHalfMm(task.largest(count)));
        }
        return known;
    }

    private static Proof byAngles(PackingTask task, int count, double knownHalfMm, Proof best) {
        var ring = new RingBound(task, count);
        double halfMm = ring.leastHalfMm(best.leastBoreMm() / 2, knownHalfMm);
        return 2 * halfMm > best.leastBoreMm()
                ? new Proof("angles around the middle of the bore, " + group(task, count), 2 * halfMm)
                : best;
    }

    private static Proof byDistances(PackingTask task, int count, double knownHalfMm, Proof best, Work work) {
        var distances = new DistanceBound(task, count);
        for (double shortRatio : SHORT_RATIOS) {
            double halfMm = knownHalfMm * (1 - shortRatio);
            if (2 * halfMm <= best.leastBoreMm()) {
                return best;
            }
            boolean refuted = distances.refutes(halfMm, MOST_WORK);
            work.add(distances.work() / PLACED_IN_A_UNIT);
            if (refuted) {
                return new Proof("distances from the middle of the bore, " + group(task, count), 2 * halfMm);
            }
        }
        return best;
    }

    private static Optional<Proof> refuted(PackingTask task, Supplier<String> bound, double leastBoreMm) {
        return leastBoreMm > task.boreMm() + 2 * SLACK_MM
                ? Optional.of(new Proof(bound.get(), leastBoreMm))
                : Optional.empty();
    }

    /** Two circles side by side along the diameter, or the diagonal of the square. */
    static double pairBoreMm(PackingTask task) {
        if (task.size() < 2) {
            return 0;
        }
        double sumMm = task.radiusMm(0) + task.radiusMm(1);
        return task.isSquare() ? sumMm * (1 + Math.sqrt(0.5)) : 2 * sumMm;
    }

    private static double areaBoreMm(PackingTask task) {
        return task.isSquare() ? Math.sqrt(Math.PI * task.squaresMm2()) : 2 * Math.sqrt(task.squaresMm2());
    }

    static Proof strongestPlain(PackingTask task) {
        Proof area = new Proof("area of all " + task.size(), areaBoreMm(task));
        Proof width = new Proof("width of the two largest side by side", pairBoreMm(task));
        Proof equal = equal(task);
        Proof two = width.leastBoreMm() > area.leastBoreMm() ? width : area;
        return equal.leastBoreMm() >= two.leastBoreMm() ? equal : two;
    }

    private static Optional<Proof> findEqual(PackingTask task) {
        Proof equal = equal(task);
        return equal.leastBoreMm() > task.boreMm() + 2 * SLACK_MM ? Optional.of(equal) : Optional.empty();
    }

    /** The largest k, each taken to be as small as the smallest of them, must go in. */
    private static Proof equal(PackingTask task) {
        int strongest = 1;
        double strongestMm = equalBoreMm(task, 1);
        for (int count = 2; count <= task.size(); count++) {
            double boreMm = equalBoreMm(task, count);
            if (boreMm > strongestMm) {
                strongest = count;
                strongestMm = boreMm;
            }
        }
        boolean proved = EqualCircles.isProved(task.isSquare(), strongest);
        String bound = proved ? "proven minimum bore for equal circles, " : "Oler's inequality for equal circles, ";
        return new Proof(bound + group(task, strongest), equalBoreMm(task, strongest));
    }

    private static double equalBoreMm(PackingTask task, int count) {
        double diameterMm = 2 * task.radiusMm(count - 1);
        boolean proved = EqualCircles.isProved(task.isSquare(), count);
        return diameterMm
                * (proved
                        ? EqualCircles.provedHalfRatio(task.isSquare(), count)
                        : EqualCircles.olerHalfRatio(task.isSquare(), count));
    }

    private static String group(PackingTask task, int count) {
        String largest = count < task.size() ? "the largest " : "";
        return largest + count + " of " + mm(2 * task.radiusMm(count - 1)) + " or larger";
    }

    private static String mm(double lengthMm) {
        return String.format(Locale.ROOT, "%.2f mm", lengthMm);
    }
}
