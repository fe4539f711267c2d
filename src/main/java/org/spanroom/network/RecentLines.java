package org.spanroom.network;

import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.Line;

/**
 * The lines of spans cut lately from routes joined end to end, which are kept whole. Ducts of one bank are mostly drawn upon one
 * another: spans that are drawn alike share one line, which spares memory. For use by one thread.
 */
final class RecentLines {
    private static final int SLOTS = 1 << 12;

    private final @Nullable Drawn[] slots = new Drawn[SLOTS];

    /** A span's line in degrees and on the ground, with the elevations of its vaults. */
    record Drawn(Line lonLat, Line ground, OptionalDouble fromM, OptionalDouble toM) {}

    /** Returns the lines of a span between vaults of the given elevations. */
    Drawn of(SpanLine line, OptionalDouble fromM, OptionalDouble toM) {
        int slot = line.hash() & (SLOTS - 1);
        Drawn last = slots[slot];
        if (last != null
                && line.isDrawnAs(last.lonLat())
                && last.fromM().equals(fromM)
                && last.toM().equals(toM)) {
            return last;
        }
        Line lonLat = line.lonLat();
        var drawn = new Drawn(lonLat, GroundLine.of(lonLat, fromM, toM), fromM, toM);
        slots[slot] = drawn;
        return drawn;
    }
}
