package org.spanroom.pipeline;

import org.spanroom.bend.BendFinder;
import org.spanroom.bore.RoomAssessor;
import org.spanroom.config.RunConfig;
import org.spanroom.model.Assessment;
import org.spanroom.model.Bends;
import org.spanroom.model.PullAssessment;
import org.spanroom.model.Room;
import org.spanroom.model.Span;
import org.spanroom.pull.PullAssessor;

/** Everything that is found out about one span by looking at that span alone. Safe for use by several threads. */
final class SpanAssessor {
    private final BendFinder bendFinder;
    private final RoomAssessor roomAssessor;
    private final PullAssessor pullAssessor;
    private final PullHours hours;

    SpanAssessor(RunConfig config) {
        this(config, PullHours.USUAL);
    }

    /**
     * An assessor that weighs choices of pulls by the work that they take.
     *
     * @param hours the work for each choice
     */
    SpanAssessor(RunConfig config, PullHours hours) {
        this.hours = hours;
        bendFinder = new BendFinder(config.bend());
        roomAssessor = new RoomAssessor(config.room());
        pullAssessor = new PullAssessor(config.pull());
    }

    /** Returns the assessor of room, whose packings are worth keeping. */
    RoomAssessor rooms() {
        return roomAssessor;
    }

    Assessment assess(Span span) {
        Bends bends = bendFinder.find(span.ground(), span.duct().insideDiameterMm());
        Room room = roomAssessor.assess(span.duct()).propose(choice -> hours.of(span, choice));
        return new Assessment(span, bends, room, pull(span, bends, room));
    }

    /** Where nothing is proposed the forces are those for all innerducts. */
    private PullAssessment pull(Span span, Bends bends, Room room) {
        return room.proposal()
                .map(choice -> pullAssessor.assess(span, bends, choice.innerductsOut()))
                .orElseGet(() -> pullAssessor.assess(span, bends));
    }
}
