package org.spanroom.output;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.ZoneTouch;
import org.spanroom.model.permit.ZoneUse;

/**
 * Counts spans and meters in each permit zone. For one thread at a time. Meters are added up as whole micrometers, so that the sums are the
 * same in whatever order spans come.
 */
final class ZoneTally {
    /** To a meter. */
    private static final double MICROMETERS = 1e6;

    /** By the zone's place in the order of reading. */
    private final Map<Integer, Sum> sums = new HashMap<>();

    private record Sum(long spans, long lengthMicrometers) {
        static final Sum NONE = new Sum(0, 0);

        Sum plus(Sum other) {
            return new Sum(spans + other.spans, lengthMicrometers + other.lengthMicrometers);
        }

        double lengthM() {
            return lengthMicrometers / MICROMETERS;
        }
    }

    /** Adds what one span touches, also of zones that have not begun. */
    void add(Permits span) {
        Stream.concat(span.touches().stream(), span.toCome().stream()).forEach(this::add);
    }

    private void add(ZoneTouch touch) {
        sums.merge(touch.zone().sequence(), new Sum(1, Math.round(touch.lengthM() * MICROMETERS)), Sum::plus);
    }

    /** Adds what another has counted, which then begins at zero. */
    void take(ZoneTally other) {
        other.sums.forEach((zone, sum) -> sums.merge(zone, sum, Sum::plus));
        other.sums.clear();
    }

    /** Returns zones with what was counted in them. */
    List<ZoneUse> counted(List<ZoneUse> zones) {
        return zones.stream()
                .map(use -> {
                    Sum sum = sums.getOrDefault(use.zone().sequence(), Sum.NONE);
                    return use.counted(sum.spans(), sum.lengthM());
                })
                .toList();
    }
}
