package org.spanroom.output.sheet;

import java.util.Optional;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.program.RecordedProgram;
import org.spanroom.model.rank.SpanExplanation;

/**
 * A duct that sheets are made of.
 *
 * @param planned when and by whom it is recovered; empty without a program
 */
public record DuctWork(SpanExplanation explained, Optional<RecordedProgram.Planned> planned) {
    /** Returns whether the span is not a candidate for recovery. */
    public boolean isExcluded() {
        return explained.ranked().verdict().isExcluded();
    }

    Span span() {
        return explained.span();
    }

    /** Returns the end to pull from: the better one; A where nothing is pulled. */
    SpanEnd pullingEnd() {
        return explained.assessment().pull().outcome().findBetterEnd().orElse(SpanEnd.A);
    }

    boolean hasPulls() {
        return !explained.assessment().pull().pulls().isEmpty();
    }
}
