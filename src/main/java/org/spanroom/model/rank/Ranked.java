package org.spanroom.model.rank;

import java.util.OptionalInt;

/** A span with what one scoring says of it, whether the span was just assessed or read back from an earlier run. */
public interface Ranked {
    String spanId();

    /** Returns 1 for the best; empty for an excluded span. */
    OptionalInt rank();

    Score score();

    /** Returns why the span is excluded, and its cautions. */
    Verdict verdict();
}
