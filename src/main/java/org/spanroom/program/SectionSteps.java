package org.spanroom.program;

import java.util.Comparator;
import java.util.Optional;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.WayStep;

/**
 * How cables that go together get through a section: in free positions where one duct has enough, else in the duct that is cheapest to
 * recover, else in a new duct. They are not split over ducts.
 */
final class SectionSteps {
    /** The duct with the fewest free positions that suffice, so that larger ones stay for larger connections. */
    private static final Comparator<DuctOffer> TIGHTEST =
            Comparator.comparingInt(DuctOffer::positionsNow).thenComparing(DuctOffer::spanId);

    private static final Comparator<DuctOffer> CHEAPEST = Comparator.comparingDouble(
                    (DuctOffer duct) -> duct.recovery().orElseThrow().costs().money())
            .thenComparingInt(DuctOffer::positionsAfter)
            .thenComparing(DuctOffer::spanId);

    private SectionSteps() {}

    /**
     * Finds the step; empty where neither a duct nor a new one takes so many cables.
     *
     * @param mayRecover says which recoveries come into question
     */
    static Optional<WayStep> find(SectionOffer section, int cables, RecoveryFilter mayRecover) {
        Optional<WayStep> free = section.ducts().stream()
                .filter(duct -> duct.positionsNow() >= cables)
                .min(TIGHTEST)
                .map(duct -> step(section, WayStep.Action.FREE, duct));
        if (free.isPresent()) {
            return free;
        }
        Optional<WayStep> recovered = section.ducts().stream()
                .filter(duct -> duct.recovery().isPresent() && duct.positionsAfter() >= cables)
                .filter(mayRecover::allows)
                .min(CHEAPEST)
                .map(duct -> step(section, WayStep.Action.RECOVER, duct));
        if (recovered.isPresent()) {
            return recovered;
        }
        return section.newDuct().positions() >= cables
                ? Optional.of(new WayStep(
                        section, true, WayStep.Action.BUILD, Optional.empty(), Optional.of(section.newDuct())))
                : Optional.empty();
    }

    private static WayStep step(SectionOffer section, WayStep.Action action, DuctOffer duct) {
        return new WayStep(section, true, action, Optional.of(duct), Optional.empty());
    }

    /** Which recoveries come into question. */
    interface RecoveryFilter {
        RecoveryFilter ALL = duct -> true;

        boolean allows(DuctOffer duct);
    }
}
