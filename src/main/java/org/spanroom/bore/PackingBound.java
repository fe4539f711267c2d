package org.spanroom.bore;

import java.util.Locale;
import java.util.Optional;

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
        return refuted(task, widest(task))
                .or(() -> refuted(task, pair(task)))
                .or(() -> refuted(task, area(task)))
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

    private static Optional<Proof> refuted(PackingTask task, Proof proof) {
        return proof.leastBoreMm() > task.boreMm() + 2 * SLACK_MM ? Optional.of(proof) : Optional.empty();
    }

    private static Proof widest(PackingTask task) {
        return new Proof(
                String.format(Locale.ROOT, "width of the largest, %.2f mm", 2 * task.radiusMm(0)),
                2 * task.radiusMm(0));
    }

    /** Two circles side by side along the diameter, or the diagonal of the square. */
    private static Proof pair(PackingTask task) {
        if (task.size() < 2) {
            return widest(task);
        }
        double sumMm = task.radiusMm(0) + task.radiusMm(1);
        double boreMm = task.isSquare() ? sumMm * (1 + Math.sqrt(0.5)) : 2 * sumMm;
        return new Proof("width of the two largest side by side", boreMm);
    }

    private static Proof area(PackingTask task) {
        double boreMm = task.isSquare() ? Math.sqrt(Math.PI * task.squaresMm2()) : 2 * Math.sqrt(task.squaresMm2());
        return new Proof("area of all " + task.size(), boreMm);
    }

    /** The largest k, each taken to be as small as the smallest of them, must go in. */
    private static Optional<Proof> findEqual(PackingTask task) {
        Optional<Proof> strongest = Optional.empty();
        for (int count = 1; count <= task.size(); count++) {
            Proof proof = equal(task, count);
            if (strongest.isEmpty() || proof.leastBoreMm() > strongest.get().leastBoreMm()) {
                strongest = Optional.of(proof);
            }
        }
        return strongest.flatMap(proof -> refuted(task, proof));
    }

    private static Proof equal(PackingTask task, int count) {
        double diameterMm = 2 * task.radiusMm(count - 1);
        if (EqualCircles.isProved(task.isSquare(), count)) {
            return new Proof(
                    "proved least bore of equal circles, " + group(task, count),
                    diameterMm * EqualCircles.provedHalfRatio(task.isSquare(), count));
        }
        return new Proof(
                "Oler's inequality for equal circles, " + group(task, count),
                diameterMm * EqualCircles.olerHalfRatio(task.isSquare(), count));
    }

    private static String group(PackingTask task, int count) {
        return String.format(
                Locale.ROOT,
                "%s%d of %.2f mm and more",
                count < task.size() ? "the largest " : "",
                count,
                2 * task.radiusMm(count - 1));
    }
}
