package org.spanroom.sample;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Says when a fault's turn has come: each kind once in its number of features, the first one at a place that the seed
 * decides. A feature gets one fault at most; a fault that does not suit a feature waits for the next that it suits.
 */
final class FaultSchedule {
    private static final int PURPOSE = 7;

    private final Map<Fault.Target, Map<Fault, Long>> due = new EnumMap<>(Fault.Target.class);
    private final Map<Fault.Target, Long> seen = new EnumMap<>(Fault.Target.class);

    FaultSchedule(long seed) {
        Chance chance = Chance.of(seed, PURPOSE);
        for (Fault fault : Fault.values()) {
            if (fault.oneIn() > 0) {
                due.computeIfAbsent(fault.target(), target -> new EnumMap<>(Fault.class))
                        .put(fault, 1L + chance.below(fault.oneIn()));
            }
        }
    }

    /** Counts a feature and returns the fault that it is to have. */
    Optional<Fault> next(Fault.Target target, Predicate<Fault> suits) {
        long place = seen.merge(target, 1L, Long::sum);
        for (Map.Entry<Fault, Long> entry : due.getOrDefault(target, Map.of()).entrySet()) {
            Fault fault = entry.getKey();
            if (entry.getValue() <= place && suits.test(fault)) {
                entry.setValue(entry.getValue() + fault.oneIn());
                return Optional.of(fault);
            }
        }
        return Optional.empty();
    }
}
