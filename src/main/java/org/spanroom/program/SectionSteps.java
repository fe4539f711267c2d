package org.spanroom.program;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.WayStep;

/**
 * How cables that go together get through a section: in free positions where one duct has enough, else in a duct that is recovered,
 * else in a new duct. They are not split over ducts.
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

    /** Finds the step, of recoveries the cheapest; empty where neither a duct nor a new one takes so many cables. */
    static Optional<WayStep> find(SectionOffer section, int cables) {
        return options(section, cables).stream().findFirst();
    }

    /**
     * Returns the steps among which an objective chooses: one where positions are free or a duct is built, and several where ducts can
     * be recovered and a costlier one can begin earlier or is more likely to work. The cheapest comes first.
     */
    static List<WayStep> options(SectionOffer section, int cables) {
        Optional<WayStep> free = section.ducts().stream()
                .filter(duct -> duct.positionsNow() >= cables)
                .min(TIGHTEST)
                .map(duct -> step(section, WayStep.Action.FREE, duct));
        if (free.isPresent()) {
            return List.of(free.get());
        }
        var recovered = new ArrayList<WayStep>();
        section.ducts().stream()
                .filter(duct -> duct.recovery().isPresent() && duct.positionsAfter() >= cables)
                .sorted(CHEAPEST)
                .map(duct -> step(section, WayStep.Action.RECOVER, duct))
                .filter(dearer -> recovered.stream().noneMatch(cheaper -> isNoWorse(cheaper, dearer)))
                .forEach(recovered::add);
        if (!recovered.isEmpty()) {
            return recovered;
        }
        return section.newDuct().positions() >= cables
                ? List.of(new WayStep(
                        section, true, WayStep.Action.BUILD, Optional.empty(), Optional.of(section.newDuct())))
                : List.of();
    }

    /** Returns whether a recovery that costs no more can also begin no later and works in every sample in which the other does. */
    private static boolean isNoWorse(WayStep cheaper, WayStep dearer) {
        var one = cheaper.duct().flatMap(DuctOffer::recovery).orElseThrow();
        var other = dearer.duct().flatMap(DuctOffer::recovery).orElseThrow();
        boolean isEarly = one.leadDays() <= other.leadDays()
                && one.notBefore()
                        .map(day -> other.notBefore()
                                .filter(than -> !than.isBefore(day))
                                .isPresent())
                        .orElse(true);
        return isEarly && works(one.feasibleDraws(), other.feasibleDraws());
    }

    private static boolean works(OptionalLong one, OptionalLong other) {
        return other.isEmpty() || (one.isPresent() && (other.getAsLong() & ~one.getAsLong()) == 0);
    }

    private static WayStep step(SectionOffer section, WayStep.Action action, DuctOffer duct) {
        return new WayStep(section, true, action, Optional.of(duct), Optional.empty());
    }
}
