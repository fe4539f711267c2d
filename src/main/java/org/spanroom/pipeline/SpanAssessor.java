package org.spanroom.pipeline;

import org.spanroom.bend.BendFinder;
import org.spanroom.bore.RoomAssessor;
import org.spanroom.config.RunConfig;
import org.spanroom.effort.EffortAssessor;
import org.spanroom.model.Assessment;
import org.spanroom.model.Bends;
import org.spanroom.model.Duct;
import org.spanroom.model.Permits;
import org.spanroom.model.PullAssessment;
import org.spanroom.model.Rates;
import org.spanroom.model.Room;
import org.spanroom.model.Span;
import org.spanroom.permit.PermitAssessor;
import org.spanroom.pull.PullAssessor;

/** Everything that is found out about one span by looking at that span alone. Safe for use by several threads. */
final class SpanAssessor {
    private final BendFinder bendFinder;
    private final RoomAssessor roomAssessor;
    private final PullAssessor pullAssessor;
    private final PermitAssessor permitAssessor;
    private final EffortAssessor effortAssessor;

    SpanAssessor(RunConfig config, PermitAssessor permitAssessor) {
        this.permitAssessor = permitAssessor;
        bendFinder = new BendFinder(config.bend());
        roomAssessor = new RoomAssessor(config.room());
        pullAssessor = new PullAssessor(config.pull());
        effortAssessor = new EffortAssessor(config.rates());
    }

    /** Returns the rates at their values. */
    Rates rates() {
        return effortAssessor.rates();
    }

    /** Returns an assessment of the same span with another duct; its pull is taken to be the same. */
    Assessment withDuct(Assessment assessed, Duct duct) {
        Span span = assessed.span();
        Room room = roomAssessor.assess(duct);
        return new Assessment(
                span,
                assessed.bends(),
                room,
                assessed.pull(),
                assessed.permits(),
                effortAssessor.assess(span, room, assessed.pull(), assessed.permits()));
    }

    Assessment assess(Span span) {
        Bends bends = bendFinder.find(span.ground(), span.duct().insideDiameterMm());
        Room room = roomAssessor.assess(span.duct());
        PullAssessment pull = pullAssessor.assess(span, bends);
        Permits permits = permitAssessor.assess(span);
        return new Assessment(span, bends, room, pull, permits, effortAssessor.assess(span, room, pull, permits));
    }
}
