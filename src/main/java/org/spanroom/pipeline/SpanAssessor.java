package org.spanroom.pipeline;

import org.spanroom.bore.RoomAssessor;
import org.spanroom.config.RunConfig;
import org.spanroom.model.Assessment;
import org.spanroom.model.Bends;
import org.spanroom.model.Room;
import org.spanroom.model.Span;
import org.spanroom.pull.PullAssessor;

/**
 * Everything that is found out about one span by looking at that span alone. Asked for a span again, it finds the same. Safe for use
 * by several threads.
 */
final class SpanAssessor {
    private final BendStore bendStore;
    private final RoomAssessor roomAssessor;
    private final PullAssessor pullAssessor;

    /** Prepares for so many spans. */
    SpanAssessor(RunConfig config, int spans) {
        bendStore = new BendStore(config.bend(), spans);
        roomAssessor = new RoomAssessor(config.room());
        pullAssessor = new PullAssessor(config.pull());
    }

    /** Assesses the span of the given number; each number stands for one span. */
    Assessment assess(int number, Span span) {
        Bends bends = bendStore.of(number, span);
        Room room = roomAssessor.assess(span.duct());
        return new Assessment(span, bends, room, pullAssessor.assess(span, bends));
    }
}
