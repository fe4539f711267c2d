package org.spanroom.model.rank;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.Line;

/**
 * A span as an earlier run wrote it, with the place that another scoring gives it.
 *
 * @param spanId its name
 * @param recorded the values of all columns that the run wrote, in their order
 * @param lonLat its line, if it was written with one
 * @param rank 1 for the best; empty for an excluded span
 */
public record RescoredSpan(
        String spanId,
        List<@Nullable Object> recorded,
        Optional<Line> lonLat,
        OptionalInt rank,
        Score score,
        Verdict verdict)
        implements Ranked {
    public RescoredSpan {
        recorded = Collections.unmodifiableList(new ArrayList<>(recorded));
    }

    /** Returns the same span at a place. */
    public RescoredSpan withRank(OptionalInt other) {
        return new RescoredSpan(spanId, recorded, lonLat, other, score, verdict);
    }
}
