package org.spanroom.pipeline;

import java.util.Optional;
import org.spanroom.bore.RoomAssessor;
import org.spanroom.config.RunConfig;
import org.spanroom.effort.EffortAssessor;
import org.spanroom.model.LatestAnswer;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.Rates;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.pull.Beside;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.SpanOffer;
import org.spanroom.permit.PermitAssessor;
import org.spanroom.pull.PullAssessor;
import org.spanroom.pull.PullSites;

/**
 * Everything that is found out about one span by looking at that span alone. Asked for a span again, it finds the same. Safe for use
 * by several threads.
 */
final class SpanAssessor {
    private final RoomSettings roomSettings;
    private final BendStore bendStore;
    private final RoomAssessor roomAssessor;
    private final LatestAnswer<Duct, Room> roomOfDuct;
    private final PullAssessor pullAssessor;
    private final PermitAssessor permitAssessor;
    private final EffortAssessor effortAssessor;

    /** Prepares for this many spans. */
    SpanAssessor(RunConfig config, PermitAssessor permitAssessor, int spans) {
        this(config, permitAssessor, spans, new RoomAssessor(config.room()));
    }

    /** Prepares for this many spans, with an assessor of room of the same config that may know some ducts. */
    SpanAssessor(RunConfig config, PermitAssessor permitAssessor, int spans, RoomAssessor roomAssessor) {
        this.permitAssessor = permitAssessor;
        bendStore = new BendStore(config.bend(), spans);
        roomSettings = config.room();
        this.roomAssessor = roomAssessor;
        roomOfDuct = new LatestAnswer<>(roomAssessor::assess);
        pullAssessor = pulls(config);
        effortAssessor = effortAssessor(config);
    }

    static EffortAssessor effortAssessor(RunConfig config) {
        return new EffortAssessor(
                config.rates(), config.vaultKinds(), config.room().demandPositions());
    }

    /** Returns the assessor of pulls that a config asks for. */
    static PullAssessor pulls(RunConfig config) {
        return new PullAssessor(config.pull(), sites(config));
    }

    /** Returns what the config says of places for the machine. */
    static PullSites sites(RunConfig config) {
        return new PullSites(config.vaultKinds(), ConfiguredParts.access(config)::isInRoadway);
    }

    /** Returns the rates at their values. */
    Rates rates() {
        return effortAssessor.rates();
    }

    /** Returns an assessment of the same span with another duct; its pull is taken to be the same. */
    Assessment withDuct(Assessment assessed, Duct duct) {
        Span span = assessed.span();
        Room room = propose(span, roomAssessor.assess(duct));
        return new Assessment(
                span,
                assessed.bends(),
                room,
                assessed.pull(),
                assessed.permits(),
                effort(span, room, assessed.pull(), assessed.permits()));
    }

    /** Returns money saved for each unit of money spent, where the span has such room and all else is as assessed; 0 if nothing comes out. */
    double savingRatio(Assessment assessed, Room room) {
        return effortAssessor.savingRatio(assessed.span(), room, assessed.pull(), assessed.permits());
    }

    /** Returns the assessor of room, whose packings are worth keeping. */
    RoomAssessor rooms() {
        return roomAssessor;
    }

    /** Assesses the span of the given number; each number is one span. */
    Assessment assess(int number, Span span) {
        Bends bends = bendStore.of(number, span);
        Room room = propose(span, roomOfDuct.of(span.duct()));
        PullAssessment pull = pull(span, bends, room);
        Permits permits = permitAssessor.assess(span);
        return new Assessment(
                span, bends, room, pull, permits, effort(span, room, pull, permits), laterPull(span, bends, room));
    }

    private Optional<Effort> effort(Span span, Room room, PullAssessment pull, Permits permits) {
        Optional<Effort> found = effortAssessor.assess(span, room, pull, permits);
        found.ifPresent(effort -> RecyclingCheck.demand(span, effort));
        return found;
    }

    /** Returns what further ducts on the path of a span would cost. */
    SpanOffer.NewDuctCost newDuct(Assessment assessed) {
        EffortQuantities quantities = assessed.effort()
                .map(Effort::quantities)
                .orElseGet(() -> effortAssessor.quantities(
                        assessed.span(), assessed.room(), assessed.pull(), assessed.permits()));
        return effortAssessor.newDuct(quantities, roomSettings.cellsPerSleeve());
    }

    /**
     * Returns the room of the choice of pulls that gains most cables for an hour on site.
     *
     * @param unproposed what {@link #rooms} says of a duct, which is the same for all spans of it
     */
    Room propose(Span span, Room unproposed) {
        return unproposed.propose(choice -> effortAssessor.siteHours(span, choice));
    }

    /** Returns the pulls of the proposal once the sleeves that have room beside the innerducts today are there, full of cables. */
    private Optional<PullAssessment> laterPull(Span span, Bends bends, Room room) {
        return room.now()
                .filter(now -> now.newCables() > 0)
                .flatMap(now -> room.proposal()
                        .map(choice -> pullAssessor.assess(span, bends, choice.innerductsOut(), beside(now))));
    }

    private Beside beside(PullChoice now) {
        return new Beside(now.sleeves(), roomSettings.newCablesMassKgPerM(now.newCables()));
    }

    /** Where nothing is proposed the forces are those for all innerducts. */
    private PullAssessment pull(Span span, Bends bends, Room room) {
        return room.proposal()
                .map(choice -> pullAssessor.assess(span, bends, choice.innerductsOut()))
                .orElseGet(() -> pullAssessor.assess(span, bends));
    }
}
