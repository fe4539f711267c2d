package org.spanroom.model.rank;

import java.util.Optional;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.bore.Room;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.network.Span;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.pull.PullAssessment;

/**
 * What the stages found out about one span, before it is compared with any other.
 *
 * @param effort hours, money, material and new build; empty if no innerduct comes out
 * @param laterPull the same pulls, once the positions beside the innerducts are used: those cables are on every innerduct that
 *     is pulled; empty where there are none, or if no innerduct comes out
 */
public record Assessment(
        Span span,
        Bends bends,
        Room room,
        PullAssessment pull,
        Permits permits,
        Optional<Effort> effort,
        Optional<PullAssessment> laterPull) {
    /** An assessment of a span beside whose innerducts nothing can be placed. */
    public Assessment(
            Span span, Bends bends, Room room, PullAssessment pull, Permits permits, Optional<Effort> effort) {
        this(span, bends, room, pull, permits, effort, Optional.empty());
    }

    /** An assessment without effort. */
    public Assessment(Span span, Bends bends, Room room, PullAssessment pull, Permits permits) {
        this(span, bends, room, pull, permits, Optional.empty());
    }

    /** An assessment without permit zones and effort. */
    public Assessment(Span span, Bends bends, Room room, PullAssessment pull) {
        this(span, bends, room, pull, Permits.NONE);
    }
}
