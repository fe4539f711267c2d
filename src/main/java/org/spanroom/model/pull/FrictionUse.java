package org.spanroom.model.pull;

import java.util.Arrays;
import java.util.Locale;

/**
 * How far each limit of a pull is used, in each state of friction; above 1 a limit fails, and one that does not apply is used 0.
 *
 * <p>Of several places where a limit applies, and of several innerducts, it is the most used one.
 */
public final class FrictionUse {
    private static final LimitKind[] KINDS = LimitKind.values();
    private static final int STATES = Friction.values().length;

    public static final FrictionUse NONE = new Builder().build();

    /** By limit, then by state. */
    private final double[] ratios;

    private FrictionUse(double[] ratios) {
        this.ratios = ratios;
    }

    /** Puts together, limit by limit, how far they are used. For one thread. */
    public static final class Builder {
        private final double[] ratios = new double[KINDS.length * STATES];

        /** Adds one use of a limit; of several the largest counts. */
        public Builder add(LimitKind kind, Friction state, double ratio) {
            int place = place(kind, state);
            ratios[place] = Math.max(ratios[place], ratio);
            return this;
        }

        public FrictionUse build() {
            return new FrictionUse(ratios.clone());
        }
    }

    /** Returns a use of one limit only. */
    public static FrictionUse of(LimitKind kind, double lubricatedRatio, double dryRatio, double badRatio) {
        return new Builder()
                .add(kind, Friction.LUBRICATED, lubricatedRatio)
                .add(kind, Friction.DRY, dryRatio)
                .add(kind, Friction.BAD, badRatio)
                .build();
    }

    /** Returns, limit by limit and state by state, the larger of both. */
    public FrictionUse max(FrictionUse other) {
        double[] most = ratios.clone();
        for (int place = 0; place < most.length; place++) {
            most[place] = Math.max(most[place], other.ratios[place]);
        }
        return new FrictionUse(most);
    }

    /** Returns how far one limit is used. */
    public double ratio(LimitKind kind, Friction state) {
        return ratios[place(kind, state)];
    }

    /** Returns whether a limit fails of those that may keep a span out of the ranking; see {@link LimitKind#excludes}. */
    public boolean isExcluding(Friction state) {
        for (LimitKind kind : KINDS) {
            if (kind.excludes() && ratio(kind, state) > 1) {
                return true;
            }
        }
        return false;
    }

    /** Returns how far the most used limit is used. */
    public double mostRatio(Friction state) {
        double most = 0;
        for (LimitKind kind : KINDS) {
            most = Math.max(most, ratio(kind, state));
        }
        return most;
    }

    @SuppressWarnings("EnumOrdinal") // places in an array, which leave no run
    private static int place(LimitKind kind, Friction state) {
        return kind.ordinal() * STATES + state.ordinal();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FrictionUse use && Arrays.equals(ratios, use.ratios);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(ratios);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%.3f lubricated, %.3f dry, %.3f bad",
                mostRatio(Friction.LUBRICATED),
                mostRatio(Friction.DRY),
                mostRatio(Friction.BAD));
    }
}
