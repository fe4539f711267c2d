package org.spanroom.output.sheet;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.program.RecordedProgram;
import org.spanroom.model.program.RecordedProgram.Amounts;
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

    /** Returns the hours on site of the job: those of the program, else of the span by itself; empty where nothing is planned. */
    OptionalDouble siteHours() {
        return amount(Amounts::siteHours, effort -> effort.time().siteHours());
    }

    /** Returns the cost of the job with all rates at their values, the same way. */
    OptionalDouble costMoney() {
        return amount(Amounts::costMoney, Effort::recoveryMoney);
    }

    /** Finds what the program says of the job where it shares a set-up, so that it takes less than by itself. */
    Optional<Amounts> shared() {
        return planned.map(RecordedProgram.Planned::amounts).filter(Amounts::isShared);
    }

    private OptionalDouble amount(ToDoubleFunction<Amounts> ofProgram, ToDoubleFunction<Effort> byItself) {
        Optional<Effort> effort = explained.assessment().effort();
        if (effort.isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(planned.map(RecordedProgram.Planned::amounts)
                .map(ofProgram::applyAsDouble)
                .orElseGet(() -> byItself.applyAsDouble(effort.get())));
    }

    boolean hasPulls() {
        return !explained.assessment().pull().pulls().isEmpty();
    }
}
