package org.spanroom.model.permit;

import java.util.List;
import java.util.stream.Stream;
import org.spanroom.model.Check;

/**
 * How a span meets a permit zone.
 *
 * @param lengthM meters of the span on the ground that are inside; the sum of the stretches
 * @param atFrom whether the span's first vault is inside
 * @param atTo whether its last vault is inside
 * @param stretches where along the span, in order
 * @param rule what the settings say of the zone's kind
 */
public record ZoneTouch(
        Zone zone, double lengthM, boolean atFrom, boolean atTo, List<Stretch> stretches, ZoneKind rule) {
    public ZoneTouch {
        Check.notNegative("lengthM", lengthM);
        stretches = List.copyOf(stretches);
    }

    /** A touch from the span's beginning by a zone of no known rule. */
    public ZoneTouch(Zone zone, double lengthM, boolean atFrom, boolean atTo) {
        this(zone, lengthM, atFrom, atTo, lengthM > 0 ? List.of(new Stretch(0, lengthM)) : List.of(), ZoneKind.NONE);
    }

    public boolean atVault() {
        return atFrom || atTo;
    }

    /** Returns the permits that recovering needs because of this zone, sorted. */
    public List<String> recoveryNeeds() {
        return Stream.concat(
                        atVault() ? rule.recoveryAtVault().stream() : Stream.of(),
                        stretches.isEmpty() ? Stream.of() : rule.recoveryAlong().stream())
                .distinct()
                .sorted()
                .toList();
    }
}
