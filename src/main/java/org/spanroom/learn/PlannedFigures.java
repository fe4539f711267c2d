package org.spanroom.learn;

import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.model.fieldwork.FieldFact;

/** What a run calculates of spans, in the units that facts are kept in; asked where a report does not say what was planned. */
public interface PlannedFigures {
    /** The item by which the length of one tail of one sleeve is asked for, a fact of {@link FieldFact#SLEEVE_USED}. */
    String TAIL = "tail";

    /** Nothing is calculated. */
    PlannedFigures NONE = new PlannedFigures() {
        @Override
        public OptionalDouble find(String spanId, FieldFact fact, String item) {
            return OptionalDouble.empty();
        }

        @Override
        public Optional<PlannedWork> work(String spanId) {
            return Optional.empty();
        }
    };

    /** Returns what the run would plan for a fact; empty for a span of another run, or a fact that is not planned. */
    OptionalDouble find(String spanId, FieldFact fact, String item);

    /** Returns what the run plans for a span; empty for a span of another run, or where nothing comes out. */
    Optional<PlannedWork> work(String spanId);
}
