package org.spanroom.bore;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Proofs that circles do not go into a bore, the plain ones first.
 *
 * <p>Every bound holds for circles that may overlap by {@link PackingTask#VERIFIED_MM}, so that no arrangement counts as
 * both found and refuted. Each speaks of the largest 1, 2, ... circles: where they do not go in, more do not.
 */
final class PackingBound {
    private static final double SLACK_MM = 2 * PackingTask.VERIFIED_MM;

    private PackingBound() {}

    /** Finds a proof by widths, areas, and equal circles as small as the smallest of a group; takes microseconds. */
    static Optional<Proof> findPlain(PackingTask task) {
        return refuted(task, () -> "width of the largest, " + mm(2 * task.radiusMm(0)), 2 * task.radiusMm(0))
                .or(() -> refuted(task, () -> "width of the two largest side by side", pairBoreMm(task)))
                .or(() -> refuted(task, () -> "area of all " + task.size(), areaBoreMm(task)))
                .or(() -> findEqual(task));
    }

    /** Finds a proof by the angles that circles round the middle of a round bore take up; takes milliseconds at most. */
    static Optional<Proof> findByAngles(PackingTask task) {
        if (task.isSquare()) {
            return Optional.empty();
        }
        for (int count = 3; count <= Math.min(task.size(), RingBound.MOST_CIRCLES); count++) {
            var ring = new RingBound(task, count);
            if (ring.refutes(task.halfMm() + SLACK_MM)) {
                return Optional.of(new Proof(
                        "angles round the middle of the bore, " + group(task, count),
                        2 * ring.leastHalfMm(task.halfMm())));
            }
        }
        return Optional.empty();
    }

    private static Optional<Proof> refuted(PackingTask task, Supplier<String> bound, double leastBoreMm) {
        return leastBoreMm > task.boreMm() + 2 * SLACK_MM
                ? Optional.of(new Proof(bound.get(), leastBoreMm))
                : Optional.empty();
    }

    /** Two circles side by side along the diameter, or the diagonal of the square. */
    private static double pairBoreMm(PackingTask task) {
        if (task.size() < 2) {
            return 0;
        }
        double sumMm = task.radiusMm(0) + task.radiusMm(1);
        return task.isSquare() ? sumMm * (1 + Math.sqrt(0.5)) : 2 * sumMm;
    }

    private static double areaBoreMm(PackingTask task) {
        return task.isSquare() ? Math.sqrt(Math.PI * task.squaresMm2()) : 2 * Math.sqrt(task.squaresMm2());
    }

    /** The largest k, each taken to be as small as the smallest of them, must go in. */
    private static Optional<Proof> findEqual(PackingTask task) {
        int strongest = 1;
        for (int count = 2; count <= task.size(); count++) {
            if (equalBoreMm(task, count) > equalBoreMm(task, strongest)) {
                strongest = count;
            }
        }
        double boreMm = equalBoreMm(task, strongest);
        if (boreMm <= task.boreMm() + 2 * SLACK_MM) {
            return Optional.empty();
        }
        boolean proved = EqualCircles.isProved(task.isSquare(), strongest);
        String bound = proved ? "proved least bore of equal circles, " : "Oler's inequality for equal circles, ";
        return Optional.of(new Proof(bound + group(task, strongest), boreMm));
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
        return largest + count + " of " + mm(2 * task.radiusMm(count - 1)) + " and more";
    }

    private static String mm(double lengthMm) {
        return String.format(Locale.ROOT, "%.2f mm", lengthMm);
    }
}
