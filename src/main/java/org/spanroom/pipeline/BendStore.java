package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.jspecify.annotations.Nullable;
import org.spanroom.bend.BendFinder;
import org.spanroom.model.Angle;
import org.spanroom.model.Line;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.BendSettings;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Span;

/**
 * The bends of all spans of a run, each found once, because they take the most time; held packed.
 *
 * <p>Ducts of a bank are mostly drawn upon one another: spans that have the same line on the ground share what was found. Several threads may
 * ask, each for spans of its own.
 */
final class BendStore {
    /** Numbers to a bend: deflection (negative to the left), start, arc length, radius (negative where assumed). */
    private static final int PACKED = 4;

    private static final int RECENT_BITS = 12;
    private static final double[] NONE = {};

    private final BendFinder finder;
    private final BendSettings settings;
    private final double[] @Nullable [] packed;
    private final AtomicReferenceArray<@Nullable Found> recent = new AtomicReferenceArray<>(1 << RECENT_BITS);

    /** The hash codes of the recent lines: where they differ, the line itself, which is far away in memory, is not looked at. */
    private final AtomicIntegerArray hashes = new AtomicIntegerArray(1 << RECENT_BITS);

    /** What was found on a line. */
    private static final class Found {
        private final Line ground;
        private final double sweepRadiusM;
        private final double[] packed;

        Found(Line ground, double sweepRadiusM, double[] packed) {
            this.ground = ground;
            this.sweepRadiusM = sweepRadiusM;
            this.packed = packed;
        }

        boolean isOf(Line line, double otherSweepRadiusM) {
            return sweepRadiusM == otherSweepRadiusM && ground.equals(line);
        }
    }

    BendStore(BendSettings settings, int spans) {
        this.finder = new BendFinder(settings);
        this.settings = settings;
        this.packed = new double[spans][];
    }

    /** Returns the bends of the span of the given number, found at the first asking. */
    Bends of(int number, Span span) {
        double[] known = packed[number];
        if (known == null) {
            known = find(span);
            packed[number] = known;
        }
        return known.length == 0 ? Bends.NONE : unpack(known);
    }

    private double[] find(Span span) {
        double sweepRadiusM = settings.sweepRadiusM(span.duct().insideDiameterMm());
        int hash = span.ground().hashCode();
        int slot = (hash * 0x9E3779B9) >>> (Integer.SIZE - RECENT_BITS);
        Found last = hashes.get(slot) == hash ? recent.get(slot) : null;
        if (last != null && last.isOf(span.ground(), sweepRadiusM)) {
            return last.packed;
        }
        double[] found = pack(finder.find(span.ground(), span.duct().insideDiameterMm()));
        recent.set(slot, new Found(span.ground(), sweepRadiusM, found));
        hashes.set(slot, hash);
        return found;
    }

    private static double[] pack(Bends bends) {
        if (bends.list().isEmpty()) {
            return NONE;
        }
        double[] packed = new double[PACKED * bends.list().size()];
        int at = 0;
        for (Bend bend : bends.list()) {
            double rad = bend.deflection().rad();
            packed[at++] = bend.turn() == Bend.Turn.LEFT ? -rad : rad;
            packed[at++] = bend.startM();
            packed[at++] = bend.arcLengthM();
            packed[at++] = bend.radiusAssumed() ? -bend.radiusM() : bend.radiusM();
        }
        return packed;
    }

    private static Bends unpack(double[] packed) {
        List<Bend> bends = new ArrayList<>(packed.length / PACKED);
        for (int at = 0; at < packed.length; at += PACKED) {
            double rad = packed[at];
            double radiusM = packed[at + 3];
            bends.add(new Bend(
                    Angle.ofRad(Math.abs(rad)),
                    rad < 0 ? Bend.Turn.LEFT : Bend.Turn.RIGHT,
                    packed[at + 1],
                    packed[at + 2],
                    Math.abs(radiusM),
                    radiusM < 0));
        }
        return new Bends(bends);
    }
}
