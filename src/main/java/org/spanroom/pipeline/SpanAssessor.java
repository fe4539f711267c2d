package org.spanroom.pipeline;

import org.spanroom.bend.BendFinder;
import org.spanroom.bore.RoomAssessor;
import org.spanroom.config.RunConfig;
import org.spanroom.model.Assessment;
import org.spanroom.model.Bends;
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

    SpanAssessor(RunConfig config, PermitAssessor permitAssessor) {
        this.permitAssessor = permitAssessor;
        bendFinder = new BendFinder(config.bend());
        roomAssessor = new RoomAssessor(config.room());
        pullAssessor = new PullAssessor(config.pull());
    }

    Assessment assess(Span span) {
        Bends bends = bendFinder.find(span.ground(), span.duct().insideDiameterMm());
        Room room = roomAssessor.assess(span.duct());
        return new Assessment(span, bends, room, pullAssessor.assess(span, bends), permitAssessor.assess(span));
    }
}
