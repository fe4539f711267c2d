package org.spanroom.rank;

import java.util.Arrays;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.FrictionUse;
import org.spanroom.model.pull.LimitKind;

/**
 * How far the tightest limit of a pull is used, by friction between its three calculated states.
 *
 * <p>Each limit is interpolated by itself, on a logarithmic scale, for forces grow exponentially with friction; then the tightest
 * counts. Interpolating the tightest of all three instead would take a radius, which friction leaves as it is, for a force.
 */
public final class UseCurve {
    private static final LimitKind[] KINDS = LimitKind.values();
    private static final Friction[] FRICTIONS = Friction.values();
    private static final int STATES = 3;
    private static final double LEAST_RATIO = 1e-8;

    /** More than interpolating rounds. */
    private static final double ROUNDING = 1e-9;

    /** Logarithms of lubricated, dry and bad, one limit after another; only of limits that may be the tightest. */
    private final double[] logs;

    /** The same of the limits that keep a span out of the ranking; the same array where no other may be the tightest. */
    private final double[] excludingLogs;

    private UseCurve(double[] logs, double[] excludingLogs) {
        this.logs = logs;
        this.excludingLogs = excludingLogs;
    }

    static UseCurve of(FrictionUse use) {
        double[] logs = logs(use, false);
        return new UseCurve(logs, excludingOnly(use, logs));
    }

    private static double[] excludingOnly(FrictionUse use, double[] all) {
        for (LimitKind kind : KINDS) {
            if (!kind.excludes() && !isExceeded(use, kind, false)) {
                return logs(use, true);
            }
        }
        return all;
    }

    private static double[] logs(FrictionUse use, boolean excludingOnly) {
        double[] logs = new double[KINDS.length * STATES];
        int kept = 0;
        for (LimitKind kind : KINDS) {
            if ((kind.excludes() || !excludingOnly) && !isExceeded(use, kind, excludingOnly)) {
                logs[kept] = log(use, kind, Friction.LUBRICATED);
                logs[kept + 1] = log(use, kind, Friction.DRY);
                logs[kept + 2] = log(use, kind, Friction.BAD);
                kept += STATES;
            }
        }
        return Arrays.copyOf(logs, kept);
    }

    /** Returns the percentage at a place from 0 (lubricated) over 0.5 (dry) to 1 (bad). */
    double percentAt(double place) {
        return 100 * Math.exp(mostLog(logs, place));
    }

    /**
     * Returns whether the pull can be done at a place: a limit that excludes no span from the ranking fails no pull either
     * ({@link LimitKind#excludes}).
     *
     * @param usedPercent what {@link #percentAt(double)} is there
     */
    boolean isPossible(double place, double usedPercent) {
        return usedPercent <= 100 || (excludingLogs != logs && mostLog(excludingLogs, place) <= 0);
    }

    private static double mostLog(double[] logs, double place) {
        // Which half cannot be foreseen: no branch.
        int lower = Math.min((int) (2 * place), 1);
        double share = 2 * place - lower;
        double most = logs[lower] + share * (logs[lower + 1] - logs[lower]);
        for (int limit = STATES; limit < logs.length; limit += STATES) {
            double low = logs[limit + lower];
            most = Math.max(most, low + share * (logs[limit + lower + 1] - low));
        }
        return most;
    }

    /** Sets the first percentages to those at the first places. */
    void percentAt(double[] places, double[] percent, int count) {
        for (int i = 0; i < count; i++) {
            percent[i] = mostLog(logs, places[i]);
        }
        for (int i = 0; i < count; i++) {
            percent[i] = 100 * Math.exp(percent[i]);
        }
    }

    /** Returns a percentage that is exceeded at every place. */
    double leastPercent() {
        double least = Double.NEGATIVE_INFINITY;
        for (int limit = 0; limit < logs.length; limit += STATES) {
            least = Math.max(least, Math.min(logs[limit], Math.min(logs[limit + 1], logs[limit + 2])));
        }
        return 100 * Math.exp(least - ROUNDING);
    }

    /** Returns a percentage that is exceeded at no place. */
    double mostPercent() {
        double most = Double.NEGATIVE_INFINITY;
        for (double log : logs) {
            most = Math.max(most, log);
        }
        return 100 * Math.exp(most + ROUNDING);
    }

    /** Returns whether another limit is used as far or further in every state, so that it is so between them too. */
    private static boolean isExceeded(FrictionUse use, LimitKind kind, boolean excludingOnly) {
        for (LimitKind other : KINDS) {
            if (other != kind && (other.excludes() || !excludingOnly) && exceeds(use, other, kind)) {
                return true;
            }
        }
        return false;
    }

    private static boolean exceeds(FrictionUse use, LimitKind other, LimitKind kind) {
        boolean more = other.compareTo(kind) < 0;
        for (Friction state : FRICTIONS) {
            if (use.ratio(other, state) < use.ratio(kind, state)) {
                return false;
            }
            more |= use.ratio(other, state) > use.ratio(kind, state);
        }
        return more;
    }

    private static double log(FrictionUse use, LimitKind kind, Friction state) {
        return Math.log(Math.max(use.ratio(kind, state), LEAST_RATIO));
    }
}
