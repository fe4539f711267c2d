package org.spanroom.sample;

import java.util.Optional;
import java.util.function.Predicate;

/**
 * Says when a fault's turn has come: each kind once in its number of features, the first one at a place that the seed
 * decides. A feature gets one fault at most; a fault that does not suit a feature waits for the next that it suits.
 */
final class FaultSchedule {
    private static final int PURPOSE = 7;

    private final long[] due = new long[Fault.values().length];
    private final long[] seen = new long[Fault.Target.values().length];

    FaultSchedule(long seed) {
        Chance chance = Chance.of(seed, PURPOSE);
        for (Fault fault : Fault.values()) {
            due[fault.ordinal()] = fault.oneIn() == 0 ? Long.MAX_VALUE : 1 + chance.below(fault.oneIn());
        }
    }

    /** Counts a feature and returns the fault that it is to have. */
    Optional<Fault> next(Fault.Target target, Predicate<Fault> suits) {
        long place = ++seen[target.ordinal()];
        for (Fault fault : Fault.values()) {
            if (fault.target() == target && due[fault.ordinal()] <= place && suits.test(fault)) {
                due[fault.ordinal()] += fault.oneIn();
                return Optional.of(fault);
            }
        }
        return Optional.empty();
    }
}
