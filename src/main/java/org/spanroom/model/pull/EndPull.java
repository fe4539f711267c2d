package org.spanroom.model.pull;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;
import org.spanroom.model.network.SpanEnd;

/**
 * One innerduct pulled out at one end of its span.
 *
 * @param tightest the limit that is used most, breakaway included, in the state by which spans are judged
 * @param failing every limit that is passed, in the order of {@link LimitKind}
 * @param forceRatio the larger of pull over what innerduct and machine bear and hold over what a live cable bears, breakaway
 *     included: what the better end is chosen by where the tightest limits are used equally
 * @param use how far each limit is used in each state of friction
 */
public record EndPull(
        SpanEnd pullingEnd,
        PullForces lubricated,
        PullForces dry,
        PullForces bad,
        LimitUse tightest,
        Set<LimitKind> failing,
        double forceRatio,
        FrictionUse use) {
    /** A pull of which only the state that it is judged by is known. */
    public EndPull(
            SpanEnd pullingEnd,
            PullForces lubricated,
            PullForces dry,
            PullForces bad,
            LimitUse tightest,
            Set<LimitKind> failing,
            double forceRatio) {
        this(
                pullingEnd,
                lubricated,
                dry,
                bad,
                tightest,
                failing,
                forceRatio,
                FrictionUse.of(
                        tightest.kind(),
                        tightest.utilizationRatio(),
                        tightest.utilizationRatio(),
                        tightest.utilizationRatio()));
    }

    public EndPull {
        failing = failing.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(failing));
    }

    public PullForces forces(Friction friction) {
        return switch (friction) {
            case LUBRICATED -> lubricated;
            case DRY -> dry;
            case BAD -> bad;
        };
    }

    public boolean isPossible() {
        return !tightest.fails();
    }
}
