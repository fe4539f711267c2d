package org.spanroom.network;

import org.jspecify.annotations.Nullable;
import org.spanroom.model.Line;

/**
 * The lines of spans cut lately from routes joined end to end, which are kept whole. Ducts of one bank are mostly drawn upon one
 * another: spans that are drawn the same share one line, which saves memory. For use by one thread.
 */
final class RecentLines {
    private static final int SLOTS = 1 << 12;

    private final @Nullable Line[] slots = new Line[SLOTS];

    /** Returns the line of a span in degrees. */
    Line of(SpanLine line) {
        int slot = line.hash() & (SLOTS - 1);
        Line last = slots[slot];
        if (last != null && line.isDrawnAs(last)) {
            return last;
        }
        Line lonLat = line.lonLat();
        slots[slot] = lonLat;
        return lonLat;
    }
}
