package org.spanroom.effort;

import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateRows;

/**
 * Ventilating a vault before entry: the air changes' time, and no less than the least time. Equation (8.1).
 *
 * @param airM3 air that the changes take
 * @param changesHours the time that a blower needs for it
 * @param leastHours the least time
 */
record Purge(double airM3, double changesHours, double leastHours) {
    /** Returns what a vault of this volume takes, by the rates that apply to it. */
    static Purge of(double volumeM3, Account account, RateRows rows) {
        double airM3 = volumeM3 * account.rate(RateKey.PURGE_AIR_CHANGES, rows);
        return new Purge(
                airM3,
                airM3 / account.rate(RateKey.BLOWER_M3_PER_HOUR, rows),
                account.rate(RateKey.PURGE_LEAST_HOURS, rows));
    }

    /** Returns whether the air changes take longer than the least time. */
    boolean takesLonger() {
        return changesHours > leastHours;
    }

    double hours() {
        return Math.max(changesHours, leastHours);
    }
}
