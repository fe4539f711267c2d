package org.spanroom.input.proposal;

import java.util.Optional;
import org.spanroom.input.layer.SourceNumber;

/** Numbers of texts. */
final class Numbers {
    /** Lengths are often recorded in whole meters or feet. */
    static final double ROUNDING_M = 0.5;

    private Numbers() {}

    static Optional<Double> of(String text) {
        return text.isEmpty() ? Optional.empty() : SourceNumber.parse(text).map(SourceNumber::inUnit);
    }
}
