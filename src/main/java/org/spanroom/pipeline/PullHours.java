package org.spanroom.pipeline;

import org.spanroom.model.PullChoice;
import org.spanroom.model.Span;

/** The crew's hours for a choice of pulls on a span: what the gain of choices is weighed against. */
interface PullHours {
    /** Hours on site, setting up and taking down, whatever is pulled; illustrative. */
    double SET_UP_HOURS = 3;

    /** Hours for each innerduct on a span of {@link #USUAL_SPAN_M}; illustrative. */
    double INNERDUCT_HOURS = 1;

    /** Hours for each dead cable on such a span; illustrative. */
    double DEAD_CABLE_HOURS = 0.5;

    /** 600 ft: with three innerducts about six hours, which is common practice without a source. */
    double USUAL_SPAN_M = 182.88;

    /** A fixed part, and a part for each pull that grows with the span. */
    PullHours USUAL = (span, choice) -> {
        double pullHours = INNERDUCT_HOURS * choice.innerductsOut() + DEAD_CABLE_HOURS * choice.deadCablesOut();
        return SET_UP_HOURS + pullHours * span.lengthM() / USUAL_SPAN_M;
    };

    /** Returns the hours that a choice takes on a span; more than 0. */
    double of(Span span, PullChoice choice);
}
